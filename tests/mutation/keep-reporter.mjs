// A reporter of Stryker that hands on every result at once, so that a run that is ended has lost nothing.
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

let listener = () => {};

/** Sets what is called with each result. */
export function onTested(listen) {
  listener = listen;
}

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Reporter, 'keep', { onMutantTested: (result) => listener(result) }),
];
