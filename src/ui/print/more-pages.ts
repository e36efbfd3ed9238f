import './crew-page.ts';
import './quote-page.ts';
import './return-page.ts';

export { CalculationPage, calculationTitle } from './calculation-page.ts';
