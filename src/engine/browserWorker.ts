/** The inside of the browser's worker. */
import { createInPlaceEngine } from './inPlaceEngine.ts';
import type { Port } from './messages.ts';
import { serve } from './serve.ts';

serve(self as unknown as Port, createInPlaceEngine());
