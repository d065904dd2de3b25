/** Open icon and emoji packages that the sweep reads, with their licence; none is a set of brands, and files named as logos are left out. */
export const PACKAGES = [
  {
    name: 'lucide-static',
    version: '1.62.0',
    licence: 'ISC',
    shows: 'strokes with round joins and caps',
    take: 550,
  },
  { name: 'heroicons', version: '2.2.0', licence: 'MIT', shows: 'fills by both rules, strokes', take: 400 },
  {
    name: '@phosphor-icons/core',
    version: '2.1.1',
    licence: 'MIT',
    shows: 'fills, strokes, translucent parts',
    take: 550,
  },
  {
    name: '@twemoji/svg',
    version: '15.0.0',
    licence: 'MIT, pictures CC BY 4.0',
    shows: 'many colours over one another',
    take: 550,
  },
  {
    name: 'flag-icons',
    version: '7.5.0',
    licence: 'MIT',
    shows: 'clip paths, reuse, gradients, nested transforms',
    take: 542,
  },
];
