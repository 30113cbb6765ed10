'use client';

import dynamic from 'next/dynamic';
import type { OrderListProps } from './order-list';

/** What drags is loaded with the questions that need it alone. */
const OrderList = dynamic(() => import('./order-list').then((loaded) => loaded.OrderList));

/** Items to be put in order. */
export function OrderFields(props: OrderListProps) {
  return <OrderList {...props} />;
}
