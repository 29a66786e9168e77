// the committed layouts, and those searched for a person's own unit, are the same to the bench
export {layoutOf} from '../units/layout-of.ts';
