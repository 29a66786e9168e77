/** What the electronics of an ECM blower take while the wheel stands, watts (common practice, no source). */
export const ecmStandbyWatts = 6;
