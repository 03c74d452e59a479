export { type Amount, amountsOf, doseAmount, type ForkState } from './amounts.ts';
export { familyOperations, type Job, neededOperations, type Operations, renewedSlots } from './closure.ts';
export { countOrders } from './count-orders.ts';
export { type Ordered, orderOfWork, precedence } from './order.ts';
