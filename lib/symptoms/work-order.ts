/** What the driver complains of, worst first; each follows from the computed state. */
export const complaintIds = ['will-not-start', 'lacks-power', 'starts-slowly', 'hunts', 'warning-lamp'] as const;
export type ComplaintId = (typeof complaintIds)[number];

export const vehicleIds = ['tipper', 'timber-truck', 'city-bus', 'mixer', 'fire-pump', 'road-sweeper'] as const;
export type VehicleId = (typeof vehicleIds)[number];

export const STORIES_PER_COMPLAINT = 3;

/** A suspect parameter number with its failure mode identifier. */
export interface TroubleCode {
  spn: number;
  fmi: number;
}

/** All that the learner is told at the start. */
export interface WorkOrder {
  complaint: ComplaintId;
  vehicle: VehicleId;
  odometerKm: number;
  /** `<complaint>-1` … `<complaint>-3` */
  story: string;
  codes: readonly TroubleCode[];
}
