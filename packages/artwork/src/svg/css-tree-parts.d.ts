// The parts of css-tree that this package needs: the whole of it holds the grammar of every CSS property and
// is four times as large.
// biome-ignore-all lint/style/noDefaultExport: the parts have default exports
declare module 'css-tree/parser' {
  export { parse as default } from 'css-tree';
}
declare module 'css-tree/generator' {
  export { generate as default } from 'css-tree';
}
declare module 'css-tree/walker' {
  export { walk as default } from 'css-tree';
}
