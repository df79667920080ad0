/** Everything round the tree: ground and shadow, stick, sun's way, pot and surroundings. */
import { memo } from 'react';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { ContactShade } from './ContactShade.tsx';
import type { Extent } from './extent.ts';
import { Ground } from './Ground.tsx';
import { MeasuringStick } from './MeasuringStick.tsx';
import { Pot } from './Pot.tsx';
import { SunPath } from './SunPath.tsx';
import { Surroundings } from './Surroundings.tsx';
import type { StageColours, SunView } from './stageModel.ts';

export interface SceneryProps {
  readonly canopy: Canopy;
  readonly standing: Uint8Array;
  readonly file: TreeFile;
  readonly extent: Extent;
  readonly sun: SunView | null;
  /** Seen by the eye in the sun, which sees neither its own way nor a stick that would hide the tree. */
  readonly isFromSun: boolean;
  readonly units: 'metric' | 'us';
  readonly colours: StageColours;
  readonly fine: boolean;
}

/** Left as it is while only the light on the leaves changes. */
export const Scenery = memo((props: SceneryProps) => {
  const { canopy, standing, file, extent, sun, isFromSun, units, colours, fine } = props;
  return (
    <>
      <Ground
        canopy={canopy}
        standing={standing}
        file={file}
        extent={extent}
        sun={sun?.now ?? null}
        colours={colours}
      />
      {!isFromSun && <MeasuringStick extent={extent} units={units} colours={colours} />}
      {sun !== null && !isFromSun && <SunPath sun={sun} extent={extent} colours={colours} />}
      <ContactShade file={file} />
      <Pot file={file} colours={colours} fine={fine} />
      <Surroundings site={file.site} extent={extent} colours={colours} />
    </>
  );
});
