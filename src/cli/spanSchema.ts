/** Days in the JSON answers. */
import * as z from 'zod';

export const date = z.iso.date().describe('YYYY-MM-DD');
export const span = z.strictObject({ from: date, to: date }).describe('First and last day, both included.');
