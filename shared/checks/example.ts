// The materials that every example of a check begins with, so that the examples show only what matters.

export const examplePreamble = `sheet ply {
  species "hardwood plywood"
  tolerance 0.004
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
  variant half { sold-as 1/2; thick 31/64 }
  variant quarter { sold-as 1/4; thick 7/32 }
}
board oak {
  species "white oak"
  variant four-quarter { rough 1; planed 3/4; widths 4 to 9; lengths 72 to 120 }
  variant eight-quarter { rough 2; planed 1 3/4; widths 4 to 9; lengths 72 to 120 }
}
veneer skins { variant oak { species "white oak"; thick 1/42; size 96 x 24 } }
coating shellac { kind ground; covers 400 ft2 per gallon; tin 1 quart }
`;
