import './style/bench.css';
import { DropZone } from './elements/drop-zone.ts';
import { FindingList } from './elements/finding-list.ts';
import { JobForm } from './elements/job-form.ts';
import { LetteringForm } from './elements/lettering-form.ts';
import { MeasuresTable } from './elements/measures-table.ts';
import { ProofApp } from './elements/proof-app.ts';
import { ProofSheet } from './elements/proof-sheet.ts';
import { VerdictLine } from './elements/verdict-line.ts';

customElements.define('drop-zone', DropZone);
customElements.define('lettering-form', LetteringForm);
customElements.define('job-form', JobForm);
customElements.define('verdict-line', VerdictLine);
customElements.define('finding-list', FindingList);
customElements.define('measures-table', MeasuresTable);
customElements.define('proof-sheet', ProofSheet);
customElements.define('proof-app', ProofApp);
