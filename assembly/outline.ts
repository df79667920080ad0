// The twin of the exact outline in `src/light/trace/outlineMask.ts`. AssemblyScript, not TypeScript.

/** Whether a place on a mask lies inside its outline: edges by row, each as two ends of two numbers. */
export function isInside(rowStartAt: usize, edgeAt: usize, mask: i32, i: f64, j: f64): bool {
  const row = rowStartAt + ((<usize>(mask * 64 + <i32>j)) << 2);
  let at = edgeAt + ((<usize>load<i32>(row)) << 5);
  const end = edgeAt + ((<usize>load<i32>(row, 4)) << 5);
  let result = false;
  for (; at < end; at += 32) {
    const low = load<f64>(at, 8);
    const high = load<f64>(at, 24);
    if (high > j != low > j) {
      const from = load<f64>(at);
      if (i < from + ((j - low) / (high - low)) * (load<f64>(at, 16) - from)) result = !result;
    }
  }
  return result;
}
