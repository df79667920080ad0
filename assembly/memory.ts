// Memory given out front to back and never taken back: a module serves one scene. AssemblyScript, not TypeScript.

let top: usize = (__heap_base + 15) & ~15;

/** Address of so many new bytes, a multiple of 16, all 0. Grows the memory, which detaches views from outside. */
export function take(bytes: usize): usize {
  const at = top;
  top = (at + bytes + 15) & ~15;
  const pages = <i32>((top + 65535) >>> 16);
  const missing = pages - memory.size();
  // Half as much again, so that growing stays rare.
  if (missing > 0 && memory.grow(missing + (memory.size() >> 1)) < 0 && memory.grow(missing) < 0)
    unreachable();
  return at;
}
