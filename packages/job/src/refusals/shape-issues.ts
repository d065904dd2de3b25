import type * as z from 'zod/mini';
import { nearestWord } from '../values/nearest-word.ts';
import { JobError } from './job-error.ts';
import type { ShapeIssue } from './job-faults.ts';

/** What a value is called by whoever types a file by hand. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'text between quotes',
  number: 'a number without quotes',
  boolean: 'true or false',
  array: 'a list in square brackets',
  tuple: 'a list in square brackets',
  object: 'a group in braces',
  record: 'a group in braces',
  null: 'null',
};

/** What was checked, and how its parts are written. */
export interface Shape {
  /** Name of the file; `null` for data given in code. */
  readonly file: string | null;
  /** Id of its schema, such as `pourproof/job@1`. */
  readonly schema: string;
  /** The keys that it may have. */
  readonly keys: readonly string[];
  /** How the value of a key is written, by key, such as `a length with its unit, such as "1/8in"`. */
  readonly forms: Readonly<Record<string, string>>;
}

/**
 * Refuses data whose shape is wrong, naming every place.
 *
 * @param error of a parse with `reportInput`
 * @throws {JobError} with the code and key of the first issue
 */
export function refuseShape(error: z.core.$ZodError, shape: Shape): never {
  const { file, schema } = shape;
  const issues = error.issues.flatMap((issue) => shapeIssues(issue, [], shape));
  const [first] = issues;
  throw new JobError(first?.code ?? 'wrong-type', first?.place ?? null, { file, schema, issues });
}

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

function shapeIssues(issue: Issue, above: Path, shape: Shape): readonly ShapeIssue[] {
  const path = [...above, ...issue.path];
  const place = placeText(path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(key, path, shape));
    case 'invalid_union':
      return unionIssues(issue, path, shape);
    case 'invalid_type':
      return [
        issue.input === undefined
          ? { code: 'missing', place, words: `is missing; it is ${formAt(path, shape, issue.expected)}` }
          : wrongType(issue.input, path, formAt(path, shape, issue.expected)),
      ];
    case 'invalid_value':
      return [
        {
          code: 'wrong-value',
          place,
          words: `${meantText(issue.input, issue.values)}must be ${issue.values.map((value) => JSON.stringify(value)).join(' or ')}`,
        },
      ];
    case 'too_small':
      return [tooSmall(issue, path, shape)];
    default:
      return [{ code: 'wrong-value', place, words: issue.message }];
  }
}

/** What was typed, and which of the words it is most like; `''` where it is like none. */
function meantText(typed: unknown, values: readonly unknown[]): string {
  const near = typeof typed === 'string' ? nearestWord(typed, values.map(String)) : null;
  return near === null ? '' : `is ${JSON.stringify(typed)}: did you mean ${JSON.stringify(near)}? It `;
}

function unknownKey(key: string, path: Path, { keys }: Shape): ShapeIssue {
  const near = path.length === 0 ? nearestWord(key, keys) : null;
  return {
    code: 'unknown-key',
    place: placeText([...path, key]),
    words: `means nothing here; ${near === null ? 'check the spelling' : `did you mean "${near}"?`}`,
  };
}

/** Of the ways in which a value may be given, the issues of the one that was meant. */
function unionIssues(
  issue: Issue & { readonly code: 'invalid_union' },
  path: Path,
  shape: Shape,
): readonly ShapeIssue[] {
  const form = formAt(path, shape, 'string');
  if (issue.errors.length === 0) {
    // no kind of a group fits: the path ends at the key that names the kind
    const group = path.slice(0, -1);
    return [wrongValue(issue.input, group, formAt(group, shape, 'object'))];
  }
  const ofRightType = issue.errors.filter(
    ([first]) => first !== undefined && !(first.code === 'invalid_type' && first.path.length === 0),
  );
  if (ofRightType.length === 0) {
    return [wrongType(issue.input, path, form)];
  }
  const known = ofRightType.filter((each) => each.every(({ code }) => code !== 'unrecognized_keys'));
  const [meant] = ofRightType.length === 1 ? ofRightType : known.length === 1 ? known : [];
  return meant === undefined
    ? [wrongValue(issue.input, path, form)]
    : meant.flatMap((each) => shapeIssues(each, path, shape));
}

function wrongValue(input: unknown, path: Path, form: string): ShapeIssue {
  return { code: 'wrong-value', place: placeText(path), words: `is ${JSON.stringify(input)}; write ${form}` };
}

function wrongType(input: unknown, path: Path, form: string): ShapeIssue {
  const kind = input === null ? 'null' : Array.isArray(input) ? 'array' : typeof input;
  return { code: 'wrong-type', place: placeText(path), words: `is ${KINDS[kind] ?? kind}; write ${form}` };
}

function tooSmall(issue: Issue & { readonly code: 'too_small' }, path: Path, shape: Shape): ShapeIssue {
  const place = placeText(path);
  const form = formAt(path, shape, 'array');
  return Array.isArray(issue.input) && issue.input.length === 0
    ? { code: 'empty-list', place, words: `is an empty list; write ${form}, or leave it out` }
    : { code: 'wrong-value', place, words: `is too short; write ${form}` };
}

/** How the value at a place is written; within a list or a group, what kind of value it is. */
function formAt(path: Path, { forms }: Shape, expected: string): string {
  const [key, ...within] = path;
  const form = typeof key === 'string' ? forms[key] : undefined;
  return form === undefined || within.some((each) => typeof each === 'string')
    ? (KINDS[expected] ?? expected)
    : form;
}

/** Lists of rows at the top of a file. */
const LISTS: ReadonlySet<PropertyKey> = new Set(['coupons', 'bits', 'woods', 'seals', 'resins', 'scales']);

/** Where something is. Rows of lists, and the slots of coupons, are numbered from 1, as a maker counts them. */
function placeText(path: Path): string {
  const [table = '', row, field, slot, ...rest] = path;
  if (!LISTS.has(table) || typeof row !== 'number') {
    return path.join('.') || '(file)';
  }
  const words = [`${String(table)}, row ${row + 1}`];
  if (field !== undefined) {
    words.push(
      field === 'slots' && typeof slot === 'number'
        ? `slot ${slot + 1}`
        : [field, slot, ...rest].filter((each) => each !== undefined).join('.'),
    );
  }
  return words.join(', ');
}
