/**
 * Counter-based random numbers: a number is a function of the seed and of what it is for, never of
 * the order in which numbers are asked. The same seed gives the same answer on every device and
 * with any number of workers.
 *
 * Mixing is the 32-bit finaliser of MurmurHash3 (Appleby, public domain) applied per word.
 */
function mix(h: number, word: number): number {
  let k = Math.imul(word, 0xcc9e2d51);
  k = (k << 15) | (k >>> 17);
  let x = h ^ Math.imul(k, 0x1b873593);
  x = Math.imul((x << 13) | (x >>> 19), 5) + 0xe6546b64;
  return x | 0;
}

function finish(h: number): number {
  let x = h;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}

/** A 32-bit hash of a text, to turn an id into a word for `random01`. */
export function hashText(text: string): number {
  let h = 0;
  for (let i = 0; i < text.length; i++) h = mix(h, text.charCodeAt(i));
  return finish(h);
}

/** A number in [0, 1), fixed by the seed and the words (whole numbers) that say what it is for. */
export function random01(seed: number, ...words: readonly number[]): number {
  let h = seed | 0;
  for (const word of words) h = mix(h, word | 0);
  return finish(mix(h, words.length)) / 4294967296;
}

/** A normal deviate with mean 0 and standard deviation 1 (Box and Muller 1958). */
export function randomNormal(seed: number, ...words: readonly number[]): number {
  const u = 1 - random01(seed, ...words, 0x5eed);
  const v = random01(seed, ...words, 0xfeed);
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
}
