import { lengthText } from './outline-file.ts';

/** A group of a DXF file: its code and its value. */
export type DxfGroup = readonly [code: number, value: string | number];

/** What a DXF file is made of. */
export interface DxfContent {
  /** Who wrote it; a comment, group code 999. */
  readonly mark: string;
  readonly layers: readonly { readonly name: string; readonly colour: number }[];
  /** Upper right corner of all that is drawn, mm; the lower left one is 0, 0. */
  readonly extents: readonly [number, number];
  readonly entities: readonly {
    readonly type: string;
    readonly layer: string;
    readonly groups: readonly DxfGroup[];
  }[];
}

/** Gives every table and object the handle that release 2000 asks for. */
class Handles {
  #last = 0;

  next(): string {
    this.#last++;
    return this.#last.toString(16).toUpperCase();
  }
}

/** Groups as text: codes and values on lines of their own. */
export function dxfText(groups: readonly DxfGroup[]): string {
  return `${groups.map(([code, value]) => `${String(code).padStart(3)}\n${value}`).join('\n')}\n`;
}

/**
 * All sections of a DXF file of release 2000: HEADER, CLASSES, TABLES, BLOCKS, ENTITIES and OBJECTS with what the DXF reference asks for at least.
 *
 * Group codes: 0 type, 2 name, 5 handle, 330 owner, 100 subclass marker, 70 flags or count, 6 line type, 62 colour index, 8 layer.
 */
export function fileSections({ mark, layers, extents, entities }: DxfContent): readonly DxfGroup[] {
  const handles = new Handles();
  const modelSpace = handles.next();
  const paperSpace = handles.next();
  const tables = tablesOf(handles, layers, [modelSpace, paperSpace]);
  const blocks = blocksOf(handles, [modelSpace, paperSpace]);
  const drawn = entities.flatMap(({ type, layer, groups }): readonly DxfGroup[] => [
    [0, type],
    [5, handles.next()],
    [330, modelSpace],
    [100, 'AcDbEntity'],
    [8, layer],
    ...groups,
  ]);
  const objects = objectsOf(handles);
  return [
    [999, mark],
    ...section('HEADER', headerOf(extents, handles.next())),
    ...section('CLASSES', []),
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', drawn),
    ...section('OBJECTS', objects),
    [0, 'EOF'],
  ];
}

function section(name: string, groups: readonly DxfGroup[]): readonly DxfGroup[] {
  return [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']];
}

/** `$INSUNITS` 4 is millimetres, `$MEASUREMENT` 1 metric. */
function headerOf([width, height]: readonly [number, number], nextHandle: string): readonly DxfGroup[] {
  return [
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$DWGCODEPAGE'],
    [3, 'ANSI_1252'],
    [9, '$HANDSEED'],
    [5, nextHandle],
    [9, '$INSUNITS'],
    [70, 4],
    [9, '$MEASUREMENT'],
    [70, 1],
    [9, '$EXTMIN'],
    [10, '0.0'],
    [20, '0.0'],
    [30, '0.0'],
    [9, '$EXTMAX'],
    [10, lengthText(width)],
    [20, lengthText(height)],
    [30, '0.0'],
  ];
}

type Spaces = readonly [model: string, paper: string];

const SPACES = ['*Model_Space', '*Paper_Space'] as const;

function tablesOf(handles: Handles, layers: DxfContent['layers'], spaces: Spaces): readonly DxfGroup[] {
  const lineTypes = ['ByBlock', 'ByLayer', 'Continuous'].map((name) => ({
    handle: handles.next(),
    marker: 'AcDbLinetypeTableRecord',
    groups: [
      [2, name],
      [70, 0],
      [3, ''],
      [72, 65],
      [73, 0],
      [40, '0.0'],
    ] as DxfGroup[],
  }));
  // layer 0 is always there
  const rows = [{ name: '0', colour: 7 }, ...layers].map(({ name, colour }) => ({
    handle: handles.next(),
    marker: 'AcDbLayerTableRecord',
    groups: [
      [2, name],
      [70, 0],
      [62, colour],
      [6, 'Continuous'],
    ] as DxfGroup[],
  }));
  const blocks = spaces.map((handle, k) => ({
    handle,
    marker: 'AcDbBlockTableRecord',
    groups: [
      [2, SPACES[k] ?? ''],
      [340, '0'],
    ] as DxfGroup[],
  }));
  return [
    ...table(handles, 'VPORT', []),
    ...table(handles, 'LTYPE', lineTypes),
    ...table(handles, 'LAYER', rows),
    ...table(handles, 'STYLE', [styleOf(handles)]),
    ...table(handles, 'VIEW', []),
    ...table(handles, 'UCS', []),
    ...table(handles, 'APPID', [
      {
        handle: handles.next(),
        marker: 'AcDbRegAppTableRecord',
        groups: [
          [2, 'ACAD'],
          [70, 0],
        ],
      },
    ]),
    ...table(handles, 'DIMSTYLE', [], [[100, 'AcDbDimStyleTable']]),
    ...table(handles, 'BLOCK_RECORD', blocks),
  ];
}

/** The text style that dimensions and texts without one of their own have. */
function styleOf(handles: Handles): Row {
  return {
    handle: handles.next(),
    marker: 'AcDbTextStyleTableRecord',
    groups: [
      [2, 'Standard'],
      [70, 0],
      [40, '0.0'],
      [41, '1.0'],
      [50, '0.0'],
      [71, 0],
      [42, '2.5'],
      [3, 'txt'],
      [4, ''],
    ],
  };
}

interface Row {
  readonly handle: string;
  readonly marker: string;
  readonly groups: readonly DxfGroup[];
}

function table(
  handles: Handles,
  name: string,
  rows: readonly Row[],
  more: readonly DxfGroup[] = [],
): readonly DxfGroup[] {
  const owner = handles.next();
  return [
    [0, 'TABLE'],
    [2, name],
    [5, owner],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, rows.length],
    ...more,
    ...rows.flatMap(({ handle, marker, groups }): readonly DxfGroup[] => [
      [0, name],
      [5, handle],
      [330, owner],
      [100, 'AcDbSymbolTableRecord'],
      [100, marker],
      ...groups,
    ]),
    [0, 'ENDTAB'],
  ];
}

function blocksOf(handles: Handles, spaces: Spaces): readonly DxfGroup[] {
  return spaces.flatMap((owner, k): readonly DxfGroup[] => {
    const name = SPACES[k] ?? '';
    return [
      [0, 'BLOCK'],
      [5, handles.next()],
      [330, owner],
      [100, 'AcDbEntity'],
      [8, '0'],
      [100, 'AcDbBlockBegin'],
      [2, name],
      [70, 0],
      [10, '0.0'],
      [20, '0.0'],
      [30, '0.0'],
      [3, name],
      [1, ''],
      [0, 'ENDBLK'],
      [5, handles.next()],
      [330, owner],
      [100, 'AcDbEntity'],
      [8, '0'],
      [100, 'AcDbBlockEnd'],
    ];
  });
}

/** The dictionary that holds all others, and an empty one of groups. */
function objectsOf(handles: Handles): readonly DxfGroup[] {
  const [root, groups] = [handles.next(), handles.next()];
  return [
    [0, 'DICTIONARY'],
    [5, root],
    [330, '0'],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'ACAD_GROUP'],
    [350, groups],
    [0, 'DICTIONARY'],
    [5, groups],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, 1],
  ];
}
