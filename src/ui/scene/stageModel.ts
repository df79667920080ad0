/**
 * What the stage is given and what it gives back: plain data, no three.js. The page codes against this
 * file alone; `Stage.tsx` is loaded lazily.
 */
import type { ReactNode, Ref } from 'react';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Sight } from '../../editor/pull/sight.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import type { Canopy } from '../../growth/canopy.ts';
import type { CutKind } from '../../plan/cut.ts';
import type { LightScale } from '../theme/lightScale.ts';
import type { PointerKind } from './draw/gesture.ts';
import type { ShareKind } from './leafColours.ts';
import type { Pixel } from './pick.ts';

/** Marks stand for cuts and for what the grower marked to stay. */
export type MarkKind = CutKind | 'keep';

/** A mark across the wood where a cut goes, or on what stays. `cutMark` in cutMark.ts makes one. */
export interface CutMark {
  /** Id of the cut, or of the branch or bud, it stands for. */
  readonly id: string;
  /** Written beside it: the number in the list, or a word. */
  readonly text: string;
  readonly kind: MarkKind;
  readonly point: Vec3;
  /** Unit vector: the growth direction of the wood there. */
  readonly along: Vec3;
  /** Of the wood at the mark, metres. */
  readonly radiusM: number;
  /** Ticked: drawn strong. Otherwise faint. */
  readonly active: boolean;
  /** Drawn large and over the others, which step back. */
  readonly isSelected: boolean;
}

/** One point of the sun's way over the chosen day. */
export interface SunPoint {
  /** Clockwise from north. */
  readonly azimuthDeg: number;
  readonly altitudeDeg: number;
  /** The hour written beside it, such as "14"; null for points without a mark. */
  readonly label: string | null;
}

export interface SunView {
  /** In order of time; points below the horizon are left out of the drawing. */
  readonly path: readonly SunPoint[];
  /** Where the sun stands now; it lights the stage. Null at night: a soft light from high up is used. */
  readonly now: { readonly azimuthDeg: number; readonly altitudeDeg: number } | null;
}

/** Colours of the stage as CSS hex (#rrggbb). Ready sets by theme are in stageColours.ts. */
export interface StageColours {
  readonly paper: string;
  readonly ink: string;
  /** Lines and letters on the ground. */
  readonly quiet: string;
  /** The disc of ground round the tree. */
  readonly ground: string;
  /** Leaves whose light is not known yet. */
  readonly plant: string;
  readonly bark: string;
  readonly deadWood: string;
  readonly bud: string;
  readonly pot: string;
  readonly soil: string;
  readonly wall: string;
  readonly neighbour: string;
  readonly sun: string;
  /** Open sky in the picture from a node. */
  readonly skyLight: string;
  /** Leaves in the direct sun and out of it, at one moment. */
  readonly lit: string;
  readonly shade: string;
  /** Outline of what is selected. */
  readonly select: string;
  /** Marks of cuts and their figures, and what is written on them. */
  readonly cut: string;
  readonly onCut: string;
}

/** What steps back or is left out so that one sees into the crown; no figure changes by it. */
export interface SeeInside {
  /** Leaves with this share of open sky or more are drawn so that one sees through them; null: none. */
  readonly fadeFrom: number | null;
  /** Leaves nearer to the eye than the trunk are left out. */
  readonly isCutAway: boolean;
  /** Only leaves between these heights above the ground, metres; null: all. */
  readonly heightsM: readonly [from: number, to: number] | null;
}

export type StageView = 'north' | 'east' | 'south' | 'west' | 'above' | 'free';

/** CSS pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export interface StageEye {
  readonly size: PictureSize;
  /** Unit vector from the middle of the picture to the eye; along an axis of the world in the sides and from above. */
  readonly facing: Vec3;
  /** Null when a side was turned by hand since. */
  readonly side: StageView | null;
  /** CSS pixels from the top left corner of the canvas, and the depth before the eye; null behind it. */
  readonly project: (point: Vec3) => Pixel | null;
  /** What a hand at this pixel points at, in the world. */
  readonly sightAt: (x: number, y: number) => Sight;
  /** Pixels that a metre takes up, so far before the eye. */
  readonly pxPerM: (depthM: number) => number;
}

/** 'plain' is flat shading without antialiasing for weak devices; 'auto' chooses by the renderer's name. */
export type StageQuality = 'full' | 'plain' | 'auto';

/** What buttons outside the stage can ask of it, by `ref`. */
export interface StageHandle {
  /** Looks at the tree from that side ("north": from the north); 'free' is the view at the start. */
  view(side: StageView): void;
  /** Brings a shoot, branch or bud to the middle, near enough to see. Unknown ids change nothing. */
  showOwner(id: string): void;
  /** The same for a point of the world, such as that of a cut mark. */
  showPoint(point: Vec3): void;
}

/** What becomes of a stroke on the stage. Pixels are those of `StageEye`. */
export interface Pencil {
  /** A stroke may begin beside all wood: what it draws is known. */
  readonly isAnywhere: boolean;
  /** @param id of the branch or bud whose wood is under the hand; null: none is */
  begin(id: string | null, at: readonly [x: number, y: number], pointerType: PointerKind): void;
  to(at: readonly [x: number, y: number]): void;
  /** @param isFree it settles on nothing while it is so */
  show(isFree: boolean): void;
  keep(): void;
  drop(): void;
}

/** What a press may have meant: ids of branches and buds, the likeliest first; none where it is plain. */
export interface Doubt {
  /** What was taken; null: nothing lay under it. */
  readonly taken: string | null;
  readonly among: readonly string[];
  /** Pixels of `StageEye`. */
  readonly at: readonly [x: number, y: number];
}

export interface StageProps {
  readonly ref?: Ref<StageHandle>;
  readonly canopy: Canopy;
  /** The tree in full leaf, by which the whole tree is framed; grown when it is asked for, as a pulled tree is not framed. */
  readonly widest: () => Canopy;
  /** Pot, surroundings, buds and condition of the wood are read from it. */
  readonly file: TreeFile;
  /** What each leaf is coloured by, in the order of `canopy.leaves`; NaN leaves it plain green. */
  readonly shares: Float32Array;
  readonly shareKind: ShareKind;
  /** Ids of shoots to be found at a glance: all others are drawn so that one sees through them. Null: no such shoots. */
  readonly spotlight: ReadonlySet<string> | null;
  readonly inside: SeeInside;
  /** The eye stands in the sun, while it is up: everything it sees is lit. */
  readonly fromSun: boolean;
  /** The light shown is of an earlier tree or date: drawn greyer until the new one is there. */
  readonly stale: boolean;
  readonly scale: LightScale;
  /** A node that is pointed out through everything before it: that whose sky is looked at. */
  readonly beacon: Vec3 | null;
  /** Ids of axes and buds that the ticked cuts take away, drawn as ghosts; all that grows from them goes too. */
  readonly gone: ReadonlySet<string>;
  readonly marks: readonly CutMark[];
  /** Ids of branches under a stroke that marks; null while there is none. */
  readonly swept: ReadonlySet<string> | null;
  readonly selectedId: string | null;
  readonly hoveredId: string | null;
  /** With the node, 1 at the base, where one of its leaves was touched, and what the press may have meant besides. */
  readonly onSelect: (id: string | null, node: number | null, doubt: Doubt) => void;
  readonly onHover: (id: string | null) => void;
  /** Null: a hand only looks. */
  readonly pencil: Pencil | null;
  readonly sun: SunView | null;
  readonly units: 'metric' | 'us';
  readonly quality: StageQuality;
  readonly colours: StageColours;
  /** No moving camera: for people who asked for less motion, and for tests. */
  readonly still: boolean;
  /** Told whenever the eye has moved; null when there is none that a hand could point through. */
  readonly onEye: (eye: StageEye | null) => void;
  /** What the picture shows, for those who cannot see it. */
  readonly label: string;
  /** Shown instead of the picture where 3D is not available. */
  readonly children: ReactNode;
}

/** For browser tests: `window.boughlightStage` while a stage is on the page. */
export interface StageProbe {
  /** CSS pixels from the top left corner of the canvas; null behind the eye. */
  project(point: Vec3): readonly [x: number, y: number] | null;
  /** Id of the axis or bud that a mouse click at this pixel of the canvas selects. */
  pick(x: number, y: number): string | null;
  drawCalls(): number;
  triangles(): number;
  /** Frames drawn since the stage began. */
  frames(): number;
}
