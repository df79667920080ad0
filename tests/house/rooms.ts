/** The rooms of the house, the order they may be built on each other, and the packages each may use. */

export interface Room {
  /** Rooms it may import, its own always included. Types count too. */
  readonly mayImport: readonly string[];
  /** Outside packages, by exact import or with a star at the end. */
  readonly packages: readonly string[];
  /** Packages that one file of the room may use, by its path in src. */
  readonly packagesOfOneFile?: Readonly<Record<string, readonly string[]>>;
  /** Files outside src that one file of the room may read, by their path from src. */
  readonly outsideOfOneFile?: Readonly<Record<string, readonly string[]>>;
}

const core = ['geometry', 'species', 'season', 'growth', 'light', 'plan'] as const;
const belowEditor = [...core, 'document', 'engine'];

export const rooms: Readonly<Record<string, Room>> = {
  geometry: { mayImport: [], packages: [] },
  species: { mayImport: ['geometry'], packages: [] },
  season: { mayImport: ['geometry', 'species'], packages: [] },
  growth: { mayImport: ['geometry', 'species', 'season'], packages: [] },
  light: {
    mayImport: ['geometry', 'species', 'season'],
    packages: [],
    packagesOfOneFile: { 'light/sun.ts': ['suncalc'] },
  },
  plan: { mayImport: ['geometry', 'species', 'season', 'growth', 'light'], packages: [] },
  document: { mayImport: core, packages: ['zod'] },
  engine: { mayImport: [...core, 'document'], packages: [] },
  editor: { mayImport: belowEditor, packages: ['zustand/vanilla'] },
  ui: {
    mayImport: [...belowEditor, 'editor'],
    packages: [
      'react',
      'react/*',
      'react-dom',
      'react-dom/*',
      'three',
      'three/*',
      '@react-three/*',
      'zustand',
      'zustand/*',
      '@fontsource-variable/*',
    ],
  },
  cli: {
    mayImport: belowEditor,
    packages: ['node:*'],
    packagesOfOneFile: {
      'cli/adviceSchemas.ts': ['zod'],
      'cli/outputSchemas.ts': ['zod'],
      'cli/spanSchema.ts': ['zod'],
      'cli/lookSchemas.ts': ['zod'],
      'cli/choiceSchema.ts': ['zod'],
      'cli/confidenceSchema.ts': ['zod'],
      'cli/sceneSchema.ts': ['zod'],
    },
    // Its version.
    outsideOfOneFile: { 'cli/main.ts': ['../package.json'] },
  },
  /** `src/index.ts`, the public core. */
  index: { mayImport: belowEditor, packages: [] },
};

/** Names that say nothing of what is inside. */
export const emptyNames = ['utils', 'util', 'helpers', 'helper', 'common', 'lib', 'misc', 'shared'];
