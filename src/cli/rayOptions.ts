/** What a command asks of the rays and leaves, whatever else it asks. */
import type { WorkRequest } from './request.ts';

export const rayOptions = ({
  seed,
  leafSeed,
  waves,
  error,
}: Pick<WorkRequest, 'seed' | 'leafSeed' | 'waves' | 'error'>) => ({
  ...(seed === undefined ? {} : { seed }),
  ...(leafSeed === undefined ? {} : { leafSeed }),
  ...(waves === undefined ? {} : { waves }),
  ...(error === undefined ? {} : { error }),
});
