export { type Amount, amountsOf, type ForkState } from './amounts.ts';
export { familyOperations, type Job, type Needed, neededOperations } from './closure.ts';
export { countOrders } from './count-orders.ts';
export { type Ordered, orderOfWork, precedence } from './order.ts';
