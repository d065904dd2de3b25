// A checker of Stryker that lets only the drawn mutants through: ranges of a file hold smaller mutants that nobody drew.
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { keyOf } from './list-mutants.mjs';

class DrawnChecker {
  #drawn = new Set();

  async init() {
    this.#drawn = new Set(JSON.parse(readFileSync(process.env.POURPROOF_DRAWN_MUTANTS, 'utf8')));
  }

  async check(mutants) {
    return Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        this.#drawn.has(keyOf(mutant))
          ? { status: 'passed' }
          : { status: 'compileError', reason: 'not drawn' },
      ]),
    );
  }

  group(mutants) {
    return [mutants.map(({ id }) => id)];
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, 'drawn', DrawnChecker)];
