/** Numbered marks where the cuts go: a plate through the wood to remove, a hoop to tip, a bead to rub off. */
import { useThree } from '@react-three/fiber';
import { useMemo } from 'react';
import { Quaternion, Vector3 } from 'three';
import type { CutKind } from '../../plan/cut.ts';
import { tagImage } from './label.ts';
import { Sign } from './Sign.tsx';
import type { CutMark, StageColours } from './stageModel.ts';

const tagForms = { 'rub off bud': 'round', remove: 'square', tip: 'pointed' } as const;

/** Marks on thin wood are never smaller than this, metres. */
const leastRadiusM = 0.009;

/** With more than these the tags are drawn smaller, so that they hide less of each other; fewer on a narrow picture. */
const manyMarks = { wide: 12, narrow: 4 };
const narrowPx = 600;
const [manyScale, selectedScale] = [0.72, 1.35];

const upright = new Vector3(0, 1, 0);

function Glyph({ kind, radiusM }: { readonly kind: CutKind; readonly radiusM: number }) {
  if (kind === 'remove') return <cylinderGeometry args={[radiusM * 2.1, radiusM * 2.1, radiusM * 0.4, 20]} />;
  if (kind === 'tip') return <torusGeometry args={[radiusM * 1.7, radiusM * 0.32, 8, 20]} />;
  return <octahedronGeometry args={[radiusM * 1.7, 1]} />;
}

interface MarkProps {
  readonly mark: CutMark;
  readonly colours: StageColours;
  readonly tagScale: number;
}

function Mark({ mark, colours, tagScale }: MarkProps) {
  const { n, kind, active, isSelected } = mark;
  const image = useMemo(() => {
    const look = active
      ? { fill: colours.cut, ink: colours.onCut, rim: colours.paper }
      : { fill: colours.paper, ink: colours.cut, rim: colours.cut };
    return tagImage(n, tagForms[kind], look);
  }, [n, kind, active, colours]);
  const turn = new Quaternion().setFromUnitVectors(upright, new Vector3(...mark.along));
  const radiusM = Math.max(leastRadiusM, mark.radiusM);
  return (
    <>
      <group position={[...mark.point]} quaternion={turn}>
        <mesh rotation={kind === 'tip' ? [Math.PI / 2, 0, 0] : [0, 0, 0]} raycast={() => null}>
          <Glyph kind={kind} radiusM={radiusM} />
          <meshBasicMaterial color={colours.cut} transparent opacity={active ? 1 : 0.7} />
        </mesh>
      </group>
      <Sign
        image={image}
        at={mark.point}
        anchor={[0.5, -0.12]}
        scale={isSelected ? selectedScale : tagScale}
        onTop
        opacity={isSelected || active ? 1 : 0.85}
        order={isSelected ? 5 : active ? 4 : 3}
      />
    </>
  );
}

export interface CutMarksProps {
  readonly marks: readonly CutMark[];
  readonly colours: StageColours;
}

export function CutMarks({ marks, colours }: CutMarksProps) {
  const width = useThree((state) => state.size.width);
  const tagScale = marks.length > manyMarks[width < narrowPx ? 'narrow' : 'wide'] ? manyScale : 1;
  return marks.map((mark) => <Mark key={mark.id} mark={mark} colours={colours} tagScale={tagScale} />);
}
