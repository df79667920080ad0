/** A young whip in the southern hemisphere, a metre high and a year old: every form is still open to it. */
import type { TreeFile } from '../../src/document/treeFile.ts';
import { TreeInHand } from '../../src/editor/forms/treeInHand.ts';
import { crookedPath } from '../../src/geometry/crookedPath.ts';
import { head } from './head.ts';
import { between, spiralBuds } from './wood.ts';

const seed = 93;
const lengthM = 0.9;

const site: TreeFile['site'] = {
  name: 'Garden above Mirrim Cove',
  latitudeDeg: -41.27,
  longitudeDeg: 173.12,
  timeZone: 'Pacific/Auckland',
  elevationM: 43,
  groundReflectance: 0.23,
  viewpoint: { name: 'the veranda', bearingDeg: 118 },
  climate: {
    source: 'guess',
    meanC: [17.9, 18, 16.1, 13.4, 10.7, 8, 7.3, 8.5, 10.6, 12.6, 14.5, 16.6],
    minC: [13.1, 13, 10.9, 8, 5.3, 2.8, 1.9, 3.2, 5.6, 7.7, 9.6, 11.8],
    sunshineH: [8.6, 8, 7.1, 6.5, 5.7, 5, 5.2, 5.8, 6.4, 7.2, 7.9, 8.2],
  },
  frost: { lastOfSpring: '09-27', firstOfAutumn: '05-14' },
  surroundings: [
    {
      kind: 'wall',
      name: 'Board fence',
      from: [-2.7, -1.35],
      to: [3.9, -2.1],
      heightM: 1.75,
      thicknessM: 0.04,
      reflectance: 0.28,
    },
  ],
};

/** One bud a node, the nodes closer together at the base and the tip. */
function nodesM(): number[] {
  const nodes: number[] = [];
  for (let at = 0.062, i = 0; at < lengthM - 0.018; i++) {
    nodes.push(at);
    const middle = Math.sin((Math.PI * at) / lengthM);
    at += (0.023 + 0.031 * middle) * between(0.9, 1.1, seed, i, 3);
  }
  return [...nodes, lengthM - 0.001];
}

export function youngWhip(): TreeFile {
  const bend = { bearingDeg: 63, uprightDeg: 2, tipUprightDeg: 6, lengthM, stretches: 5, strayDeg: 2 };
  const tree = new TreeInHand().add({
    id: 'trunk',
    name: 'Whip',
    kind: 'trunk',
    parentId: null,
    atM: 0,
    path: crookedPath(bend, seed, 1),
    baseDiameterM: 0.0174,
    tipDiameterM: 0.0083,
    grownIn: 2025,
    buds: spiralBuds('trunk', nodesM(), 212, 137.5, seed),
  });
  return {
    ...head(
      'young-whip',
      'Young whip, its form still to be made',
      'An invented tree, one year old, at bud break.',
    ),
    species: 'fig',
    cultivar: { name: '', ripening: 'early', bearsFirstCrop: true },
    site,
    standing: {
      pot: { topDiameterM: 0.33, baseDiameterM: 0.26, heightM: 0.31, soilBelowRimM: 0.03 },
      at: [0.2, 0.4],
      turnedDeg: 0,
    },
    season: { budBreakOn: '2026-09-11', sketchedOn: '2026-09-16' },
    settings: {},
    axes: tree.axes,
  };
}
