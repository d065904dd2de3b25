// A reporter of Stryker that hands on every result at once, so that a run that is ended has lost nothing.
import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

let listener = () => {};
let testCount = 0;

/** Sets what is called with each result. */
export function onTested(listen) {
  listener = listen;
}

/**
 * A result as it is meant: a module that can no longer be loaded takes its test files with it, which the runner does not tell from files
 * without tests. A mutant that is reached while modules load is met by all tests, so that some are missing then.
 */
function asMeant(result) {
  const isUnloaded = result.status === 'Survived' && result.static && result.testsCompleted < testCount;
  return isUnloaded
    ? { ...result, status: 'RuntimeError', statusReason: 'a test file does not load' }
    : result;
}

export const strykerPlugins = [
  declareValuePlugin(PluginKind.Reporter, 'keep', {
    onDryRunCompleted: ({ result }) => {
      testCount = result.tests.length;
    },
    onMutantTested: (result) => listener(asMeant(result)),
  }),
];
