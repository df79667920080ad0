/** What commands ask of the page. */
import { createContext, useContext } from 'react';
import type { Host } from '../../editor/commands.ts';

export const HostContext = createContext<Host | null>(null);

export function useHost(): Host {
  const host = useContext(HostContext);
  if (host === null) throw new Error('useHost: there is no host above this component');
  return host;
}
