// Steady voltages of a 120/240 V single-phase three-wire supply, volts rms.
//
// Source: ANSI C84.1 Table 1. Range A: normal. Range B: for a limited time, to be corrected. Service: at the point of
// delivery. Utilization: at the equipment; editions to 2006 and from 2011 on differ. Some states set other limits.
// Status: as each row says; the service minimum of range B (110 V, 220 V) and the values up to 2006 are from memory.

/// The ranges.
pub const VOLTAGE_RANGES: [VoltageRow; 6] = [
    VoltageRow { place: VoltagePlace::Service, range: VoltageRange::A, editions: VoltageEditions::All, least_leg_v: 114.0, most_leg_v: 126.0, least_across_v: 228.0, most_across_v: 252.0, status: Status::Confirmed },
    VoltageRow { place: VoltagePlace::Utilization, range: VoltageRange::A, editions: VoltageEditions::To2006, least_leg_v: 110.0, most_leg_v: 126.0, least_across_v: 220.0, most_across_v: 252.0, status: Status::FromMemory },
    VoltageRow { place: VoltagePlace::Utilization, range: VoltageRange::A, editions: VoltageEditions::From2011, least_leg_v: 108.0, most_leg_v: 126.0, least_across_v: 216.0, most_across_v: 252.0, status: Status::Confirmed },
    VoltageRow { place: VoltagePlace::Service, range: VoltageRange::B, editions: VoltageEditions::All, least_leg_v: 110.0, most_leg_v: 127.0, least_across_v: 220.0, most_across_v: 254.0, status: Status::FromMemory },
    VoltageRow { place: VoltagePlace::Utilization, range: VoltageRange::B, editions: VoltageEditions::To2006, least_leg_v: 106.0, most_leg_v: 127.0, least_across_v: 212.0, most_across_v: 254.0, status: Status::FromMemory },
    VoltageRow { place: VoltagePlace::Utilization, range: VoltageRange::B, editions: VoltageEditions::From2011, least_leg_v: 104.0, most_leg_v: 127.0, least_across_v: 208.0, most_across_v: 254.0, status: Status::Confirmed },
];
