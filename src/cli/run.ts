import { checkCommand } from './checkCommand.ts';
import { dayCommand } from './dayCommand.ts';
import { helpText } from './help.ts';
import { lightCommand } from './lightCommand.ts';
import { planCommand } from './planCommand.ts';
import type { Read } from './read.ts';
import { type Request, readRequest } from './request.ts';
import { sceneCommand } from './sceneCommand.ts';
import { skyCommand } from './skyCommand.ts';
import type { Workplace } from './workplace.ts';

function answer(request: Request, workplace: Workplace): Promise<Read<string>> {
  switch (request.command) {
    case 'light':
      return lightCommand(request, workplace);
    case 'day':
      return dayCommand(request, workplace);
    case 'sky':
      return skyCommand(request, workplace);
    case 'plan':
      return planCommand(request, workplace);
    case 'check':
      return checkCommand(request, workplace);
    case 'scene':
      return sceneCommand(request, workplace);
    case 'help':
      return Promise.resolve({ ok: true, value: helpText });
    case 'version':
      return Promise.resolve({ ok: true, value: `${workplace.version}\n` });
  }
}

/**
 * Does what the words ask for. Standard output gets the whole answer or nothing.
 * @returns the exit code: 0 done, 2 the words or the file cannot be used, 1 a fault of the program
 */
export async function run(args: readonly string[], workplace: Workplace): Promise<0 | 1 | 2> {
  const { terminal } = workplace;
  const request = readRequest(args);
  if (!request.ok) {
    terminal.err(`boughlight: ${request.reason}. See boughlight --help.\n`);
    return 2;
  }
  try {
    const answered = await answer(request.value, workplace);
    if (answered.ok) await terminal.out(answered.value);
    else terminal.err(`boughlight: ${answered.reason}\n`);
    return answered.ok ? 0 : 2;
  } catch (error) {
    terminal.err(`boughlight: a fault of the program, not of your file: ${String(error)}\n`);
    return 1;
  }
}
