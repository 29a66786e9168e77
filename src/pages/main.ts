import './design/fonts.css';
import './design/theme.css';
import './design/base.css';
import './design/print.css';
import {followTheme} from './app/theme-choice.ts';
import './app/app.element.ts';

followTheme();
