/** Words of drawing on the stage. */
export const drawingWords = {
  tools: 'Drawing',
  chooser: 'Which one was meant?',
  close: 'Close the list',
  budOn: (branch: string) => `Bud on ${branch}`,
  again: 'Draw again',
  againHelp: 'Draw the selected branch over: what this view shows changes, its depth stays',
  snap: 'Settle',
  snapHelp: 'Tips settle on wood, upright, level and bearings of 15°; hold Alt to draw freely',
  againHint: (name: string) => `Draw ${name} over, from its base.`,
  plane: (words: string) => `In the ${words}`,
} as const;
