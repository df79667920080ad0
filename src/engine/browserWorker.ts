/** The inside of the browser's workers: one is the engine, which starts the others, the tracers, by the same script. */
import { browserTracers, tracerName } from './browserTracers.ts';
import { createInPlaceEngine } from './inPlaceEngine.ts';
import { serve } from './serve.ts';
import { serveTracer } from './serveTracer.ts';
import type { TracerPort } from './tracerMessages.ts';

const port = self as unknown as TracerPort;
if (self.name === tracerName) serveTracer(port);
else serve(port, createInPlaceEngine(browserTracers()));
