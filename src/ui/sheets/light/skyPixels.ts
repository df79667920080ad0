/** The colours of the picture of the sky over a node. */
import type { SkyAnswer, SkyThing } from '../../../engine/look.ts';
import type { StageColours } from '../../scene/stageModel.ts';
import { type LinearRgb, linearRgbOf, mixRgb, srgbBytes } from '../../theme/srgb.ts';

const colourOf = (thing: SkyThing, colours: StageColours): string => {
  switch (thing.kind) {
    case 'sky':
      return colours.skyLight;
    case 'leaf':
      return colours.plant;
    case 'wood':
      return colours.bark;
    case 'pot':
      return colours.pot;
    case 'crown':
    case 'hedge':
      return colours.neighbour;
    default:
      return colours.wall;
  }
};

/** Leaves that let light through are paler, by so much of the way to the sky at most. */
const paleness = 0.55;

/** Shoots beside each other differ in tone by up to so much, so that the eye can part them. */
const toneSpread = 0.42;
const black: LinearRgb = [0, 0, 0];

/** Neighbours in the list get tones far apart: steps of the golden section. */
const toneOf = (index: number): number => toneSpread * ((index * 0.618034) % 1);

const keyOf = (thing: SkyThing): string | null =>
  thing.kind === 'sky' ? null : 'id' in thing ? thing.id : thing.name;

/** Four bytes a dot: red, green, blue and how solid. */
export function skyPixels(
  answer: SkyAnswer,
  colours: StageColours,
  marked: string | null,
): Uint8ClampedArray {
  const { first, passed, things } = answer;
  const pixels = new Uint8ClampedArray(first.length * 4);
  const sky = linearRgbOf(colours.skyLight);
  const mark = linearRgbOf(colours.cut);
  const own = things.map((thing, index) => {
    const plain = linearRgbOf(colourOf(thing, colours));
    const colour = 'id' in thing ? mixRgb(plain, black, toneOf(index)) : plain;
    return marked !== null && keyOf(thing) === marked ? mixRgb(colour, mark, 0.75) : colour;
  });
  for (let dot = 0; dot < first.length; dot++) {
    const thing = own[first[dot] as number];
    if (thing === undefined) continue;
    pixels.set(srgbBytes(mixRgb(thing, sky, paleness * (passed[dot] as number))), 4 * dot);
    pixels[4 * dot + 3] = 255;
  }
  return pixels;
}
