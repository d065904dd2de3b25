import './no-code-from-text.ts';
import './look/page.css';
import './elements/proof-app.ts';
