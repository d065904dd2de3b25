import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';

/** Ways out that take long to find, found when they are asked for: a job that is only tried seldom needs them. */
export function proposed(find: () => readonly Fix[]): Finding['fix'] {
  let options: Fix[] | null = null;
  return {
    get options(): Fix[] {
      options ??= [...find()];
      return options;
    },
  };
}
