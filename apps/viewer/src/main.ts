import './look/page.css';
import './elements/proof-app.ts';
