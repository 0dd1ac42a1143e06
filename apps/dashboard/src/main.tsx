// Begins: the page in the chosen scheme, then the shell.
import { createRoot } from 'react-dom/client';
import './no-eval.ts';
import './ui/tokens.css';
import './ui/fonts.css';
import './ui/base.css';
import { Shell } from './shell/shell.tsx';
import { recallScheme } from './ui/scheme.ts';

recallScheme();
const place = document.getElementById('dashboard');
if (place) createRoot(place).render(<Shell />);
