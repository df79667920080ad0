/** Words of the printed list. */
export const paperWords = {
  work: (day: string, boldness: string) => `Work of ${day}, ${boldness} plan.`,
  fromPlace: (name: string, from: string) => `Seen from ${name} (${from})`,
  fromSide: (from: string) => `Seen from the ${from}`,
  fromAbove: 'Seen from above',
  northUp: 'north ↑',
  halfMetre: '50 cm',
  foot: '1 ft',
  list: 'Cut list',
  notes: 'Notes',
  pinch: 'In early summer',
  stays: 'Marked to stay',
} as const;
