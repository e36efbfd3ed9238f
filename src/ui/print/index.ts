export { CalculationPage, type PagePart } from './calculation-page.ts';
export { printOnCommand, printPage, type PrintedPage } from './print-page.ts';
export { SupplierPage } from './supplier-page.ts';
