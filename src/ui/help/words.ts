/** Visible text of the help page. */
export const helpWords = {
  title: 'Help',
  close: 'Close',
  commands: 'Every command',
  columns: { what: 'What it does', keys: 'Keys' },
  paragraphs: [
    'Place says where the tree stands, Tree what grew, Light who gets how much light, Work what to do. Touch a shoot on the tree or in a table: both show it.',
    'Drag with one finger or the left button to turn the tree, with two fingers or the right button to move it; pinch or roll the wheel to come nearer.',
    'From a side and from above all rays are parallel: what you change there keeps its depth. Keys without Ctrl or Alt can be turned off in the menu.',
    'With Draw on, the branch that is picked has handles: its tip, its bends, where it leaves its parent, a ring to turn it round its parent, and its thickness. Arrow keys move the handle that has the focus, with Shift in small steps; Enter keeps the change, Escape leaves no trace. A locked figure holds in every pull.',
    'Everything is worked out and kept on this device. Nothing is sent anywhere. If the browser’s data is deleted, the tree goes with it: save a file now and then.',
  ],
} as const;
