/** A ring round one place of the tree, seen through everything before it. */
import { useMemo } from 'react';
import type { Vec3 } from '../../geometry/vec.ts';
import { ringImage } from './label.ts';
import { Sign } from './Sign.tsx';
import type { StageColours } from './stageModel.ts';

const widthPx = 26;

export function Beacon({ at, colours }: { readonly at: Vec3; readonly colours: StageColours }) {
  const image = useMemo(() => ringImage(widthPx, colours.select, colours.paper), [colours]);
  return <Sign image={image} at={at} onTop order={6} />;
}
