/** The memory of a message that can be handed over rather than copied: every buffer that one typed array fills. */
export function transferable(message: unknown): ArrayBuffer[] {
  const buffers = new Set<ArrayBuffer>();
  const look = (value: unknown): void => {
    if (ArrayBuffer.isView(value)) {
      const { buffer, byteLength } = value;
      if (buffer instanceof ArrayBuffer && buffer.byteLength === byteLength && byteLength > 0)
        buffers.add(buffer);
    } else if (typeof value === 'object' && value !== null) {
      for (const part of Object.values(value)) look(part);
    }
  };
  look(message);
  return [...buffers];
}
