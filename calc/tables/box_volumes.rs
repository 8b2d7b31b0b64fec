// Metal boxes: volume in cubic inches and the most conductors of one size, with nothing else in the box.
//
// Source: NFPA 70-2023, 70-2020 and 70-2017 Table 314.16(A). `most` is for 18, 16, 14, 12, 10, 8 and 6 AWG. `per_gang`:
// volume and counts are for each gang. Nonmetallic boxes and boxes not listed: the volume marked on them, 314.16(A)(2).
// The 4 x 1-1/4 round or octagonal box is printed with 5 conductors of 8 AWG, though 12.5 / 3.00 is 4.17; every other
// count is floor(volume / allowance). The arithmetic of 314.16(B) is used, never the counts.
// Status: round, octagonal, square and the common device boxes confirmed in a published copy; from memory: the volumes
// of 4 x 2-1/8 x 1-1/2 and x 2-1/8, masonry, FS and FD boxes.

/// The boxes, by family, from the smallest.
pub const BOX_VOLUMES: [BoxRow; 24] = [
    BoxRow { family: BoxFamily::RoundOctagonal, trade_size_in: "4 x 1-1/4", volume_in3: 12.5, most: [8, 7, 6, 5, 5, 5, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::RoundOctagonal, trade_size_in: "4 x 1-1/2", volume_in3: 15.5, most: [10, 8, 7, 6, 6, 5, 3], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::RoundOctagonal, trade_size_in: "4 x 2-1/8", volume_in3: 21.5, most: [14, 12, 10, 9, 8, 7, 4], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4 x 1-1/4", volume_in3: 18.0, most: [12, 10, 9, 8, 7, 6, 3], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4 x 1-1/2", volume_in3: 21.0, most: [14, 12, 10, 9, 8, 7, 4], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4 x 2-1/8", volume_in3: 30.3, most: [20, 17, 15, 13, 12, 10, 6], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4-11/16 x 1-1/4", volume_in3: 25.5, most: [17, 14, 12, 11, 10, 8, 5], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4-11/16 x 1-1/2", volume_in3: 29.5, most: [19, 16, 14, 13, 11, 9, 5], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Square, trade_size_in: "4-11/16 x 2-1/8", volume_in3: 42.0, most: [28, 24, 21, 18, 16, 14, 8], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 1-1/2", volume_in3: 7.5, most: [5, 4, 3, 3, 3, 2, 1], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 2", volume_in3: 10.0, most: [6, 5, 5, 4, 4, 3, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 2-1/4", volume_in3: 10.5, most: [7, 6, 5, 4, 4, 3, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 2-1/2", volume_in3: 12.5, most: [8, 7, 6, 5, 5, 4, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 2-3/4", volume_in3: 14.0, most: [9, 8, 7, 6, 5, 4, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "3 x 2 x 3-1/2", volume_in3: 18.0, most: [12, 10, 9, 8, 7, 6, 3], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "4 x 2-1/8 x 1-1/2", volume_in3: 10.3, most: [6, 5, 5, 4, 4, 3, 2], per_gang: false, status: Status::FromMemory },
    BoxRow { family: BoxFamily::Device, trade_size_in: "4 x 2-1/8 x 1-7/8", volume_in3: 13.0, most: [8, 7, 6, 5, 5, 4, 2], per_gang: false, status: Status::Confirmed },
    BoxRow { family: BoxFamily::Device, trade_size_in: "4 x 2-1/8 x 2-1/8", volume_in3: 14.5, most: [9, 8, 7, 6, 5, 4, 2], per_gang: false, status: Status::FromMemory },
    BoxRow { family: BoxFamily::Masonry, trade_size_in: "3-3/4 x 2 x 2-1/2", volume_in3: 14.0, most: [9, 8, 7, 6, 5, 4, 2], per_gang: true, status: Status::FromMemory },
    BoxRow { family: BoxFamily::Masonry, trade_size_in: "3-3/4 x 2 x 3-1/2", volume_in3: 21.0, most: [14, 12, 10, 9, 8, 7, 4], per_gang: true, status: Status::FromMemory },
    BoxRow { family: BoxFamily::FsSingleCover, trade_size_in: "min internal depth 1-3/4", volume_in3: 13.5, most: [9, 7, 6, 6, 5, 4, 2], per_gang: true, status: Status::FromMemory },
    BoxRow { family: BoxFamily::FdSingleCover, trade_size_in: "min internal depth 2-3/8", volume_in3: 18.0, most: [12, 10, 9, 8, 7, 6, 3], per_gang: true, status: Status::FromMemory },
    BoxRow { family: BoxFamily::FsMultipleCover, trade_size_in: "min internal depth 1-3/4", volume_in3: 18.0, most: [12, 10, 9, 8, 7, 6, 3], per_gang: true, status: Status::FromMemory },
    BoxRow { family: BoxFamily::FdMultipleCover, trade_size_in: "min internal depth 2-3/8", volume_in3: 24.0, most: [16, 13, 12, 10, 9, 8, 4], per_gang: true, status: Status::FromMemory },
];
