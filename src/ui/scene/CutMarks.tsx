/** Marks where the cuts go (a plate through the wood to remove, a hoop to tip, a bead to rub off), and on what is to stay. */
import { type RootState, useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { Quaternion, type Sprite, Vector3 } from 'three';
import { coveredBy } from './covered.ts';
import { type LabelImage, type TagForm, type TagLook, tagImage } from './label.ts';
import type { CutMark, MarkKind, StageColours } from './stageModel.ts';
import { layTags, type Tag } from './tagLayout.ts';
import { pixelsPerMetre } from './useEye.ts';

const tagForms: Readonly<Record<MarkKind, TagForm>> = {
  'rub off bud': 'round',
  remove: 'square',
  tip: 'pointed',
  keep: 'flag',
};

/** Marks on thin wood are never smaller than this, metres. */
const leastRadiusM = 0.009;

/** With more than these the tags are drawn smaller, so that they hide less of each other; fewer on a narrow picture. */
const manyMarks = { wide: 12, narrow: 4 };
const narrowPx = 600;
const [manyScale, selectedScale] = [0.72, 1.35];

const upright = new Vector3(0, 1, 0);

function Glyph({ kind, radiusM }: { readonly kind: MarkKind; readonly radiusM: number }) {
  if (kind === 'remove') return <cylinderGeometry args={[radiusM * 2.1, radiusM * 2.1, radiusM * 0.4, 20]} />;
  if (kind === 'tip') return <torusGeometry args={[radiusM * 1.7, radiusM * 0.32, 8, 20]} />;
  return <octahedronGeometry args={[radiusM * 1.7, 1]} />;
}

/** What is moved in the picture, without React, whenever the eye moves. */
interface Movable {
  readonly tag: Sprite | null;
  readonly leader: Sprite | null;
}

interface MarkProps {
  readonly mark: CutMark;
  readonly image: LabelImage;
  readonly colours: StageColours;
  readonly onTag: (tag: Sprite | null) => void;
  readonly onLeader: (leader: Sprite | null) => void;
}

function Mark({ mark, image, colours, onTag, onLeader }: MarkProps) {
  const { kind, active, isSelected } = mark;
  const turn = new Quaternion().setFromUnitVectors(upright, new Vector3(...mark.along));
  const radiusM = Math.max(leastRadiusM, mark.radiusM);
  const colour = kind === 'keep' ? colours.ink : colours.cut;
  const order = isSelected ? 5 : active ? 4 : 3;
  return (
    <>
      <group position={[...mark.point]} quaternion={turn}>
        <mesh rotation={kind === 'tip' ? [Math.PI / 2, 0, 0] : [0, 0, 0]} raycast={() => null}>
          <Glyph kind={kind} radiusM={radiusM} />
          <meshBasicMaterial color={colour} transparent opacity={active ? 1 : 0.7} />
        </mesh>
      </group>
      <sprite
        ref={onLeader}
        position={[...mark.point]}
        center={[0.5, 0]}
        renderOrder={2}
        raycast={() => null}
      >
        <spriteMaterial color={colour} sizeAttenuation={false} depthTest={false} depthWrite={false} />
      </sprite>
      <sprite ref={onTag} position={[...mark.point]} renderOrder={order} raycast={() => null}>
        <spriteMaterial
          map={image.texture}
          sizeAttenuation={false}
          depthTest={false}
          depthWrite={false}
          transparent
          opacity={isSelected || active ? 1 : 0.85}
        />
      </sprite>
    </>
  );
}

/** Gap between the wood and the tail of a tag, as a share of the tag's height. */
const tailGap = 0.12;
const leaderPx = 1.6;

const place = new Vector3();

/** Sets the tags side by side, each with a line to its place where it had to move. */
function spreadTags(
  marks: readonly CutMark[],
  images: readonly LabelImage[],
  movables: readonly Movable[],
  { camera, size }: Pick<RootState, 'camera' | 'size'>,
): void {
  const tagScale = marks.length > manyMarks[size.width < narrowPx ? 'narrow' : 'wide'] ? manyScale : 1;
  const tags = marks.map(({ point, isSelected, active }, i): Tag => {
    const { x, y } = place.set(...point).project(camera);
    const scale = isSelected ? selectedScale : tagScale;
    const { widthPx, heightPx } = images[i] as LabelImage;
    return {
      x: ((x + 1) / 2) * size.width,
      y: ((1 - y) / 2) * size.height,
      widthPx: widthPx * scale,
      heightPx: heightPx * scale,
      rank: isSelected ? 2 : active ? 1 : 0,
    };
  });
  const perPx = 1 / pixelsPerMetre(camera, size.height, 1);
  const room = { top: coveredBy(size).above, width: size.width };
  layTags(tags, room).forEach(([right, down], i) => {
    const { widthPx, heightPx } = tags[i] as Tag;
    const { tag, leader } = movables[i] ?? { tag: null, leader: null };
    tag?.scale.set(widthPx * perPx, heightPx * perPx, 1);
    tag?.center.set(0.5 - right / widthPx, down / heightPx - tailGap);
    const lengthPx = Math.hypot(right, down);
    if (leader === null) return;
    leader.visible = lengthPx > 0;
    leader.scale.set(leaderPx * perPx, (lengthPx + tailGap * heightPx) * perPx, 1);
    leader.material.rotation = Math.atan2(-right, tailGap * heightPx - down);
  });
}

function tagLook(kind: MarkKind, isActive: boolean, { cut, onCut, ink, paper }: StageColours): TagLook {
  if (kind === 'keep') return { fill: paper, ink, rim: ink };
  return isActive ? { fill: cut, ink: onCut, rim: paper } : { fill: paper, ink: cut, rim: cut };
}

export interface CutMarksProps {
  readonly marks: readonly CutMark[];
  readonly colours: StageColours;
}

export function CutMarks({ marks, colours }: CutMarksProps) {
  const movables = useRef<Movable[]>([]);
  const images = useMemo(
    () =>
      marks.map(({ text, kind, active }) => tagImage(text, tagForms[kind], tagLook(kind, active, colours))),
    [marks, colours],
  );
  useEffect(
    () => () => {
      for (const { texture } of images) texture.dispose();
    },
    [images],
  );
  useFrame((state) => spreadTags(marks, images, movables.current, state));
  const hold = (i: number, part: Partial<Movable>): void => {
    movables.current[i] = { ...(movables.current[i] ?? { tag: null, leader: null }), ...part };
  };
  return marks.map((mark, i) => (
    <Mark
      key={mark.id}
      mark={mark}
      image={images[i] as LabelImage}
      colours={colours}
      onTag={(tag) => hold(i, { tag })}
      onLeader={(leader) => hold(i, { leader })}
    />
  ));
}
