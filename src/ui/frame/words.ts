/** Visible text of the page's frame. */
export const frameWords = {
  product: 'Boughlight',
  sheets: {
    place: { tab: 'Place', about: 'Where it stands' },
    tree: { tab: 'Tree', about: 'What grew' },
    light: { tab: 'Light', about: 'Who gets how much' },
    work: { tab: 'Work', about: 'What to do' },
  },
  tabs: 'Sheets',
  menu: 'Menu',
  closeMenu: 'Close the menu',
  samples: 'Sample trees',
  files: 'Your trees',
  look: 'Theme',
  units: 'Units',
  themes: { paper: 'Paper', dusk: 'Dusk', outdoors: 'Outdoors' },
  unitNames: { metric: 'Metric (cm, m)', us: 'US (in, ft)' },
  keys: 'Keys',
  singleKeys: 'Keys alone, without Ctrl or Alt, run commands',
  drop: 'Let go to open this tree or weather file',
  taller: 'Raise the sheet',
  lower: 'Lower the sheet',
  dismiss: 'Close this message',
  kept: {
    waiting: 'Keeping on this device',
    failed: 'Not kept on this device. Save a file now.',
    never: 'Nothing changed yet',
  },
  keptAt: (time: string) => `Kept on this device ${time}`,
  noPicture:
    'This browser shows no 3D picture. Every figure is in the sheets: Tree lists the branches, Light the shoots, Work the cuts.',
  pictureLoading: 'Drawing the tree',
} as const;
