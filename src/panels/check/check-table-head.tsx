/** The heading of a table with one row for each chamber; the role is said again because on a phone the rows become cards. */
export function CheckTableHead({ titles }: { readonly titles: readonly string[] }) {
  return (
    <thead role="rowgroup">
      <tr role="row">
        {titles.map((title) => (
          <th key={title} role="columnheader" scope="col">
            {title}
          </th>
        ))}
      </tr>
    </thead>
  );
}

/** The heading of a chamber's row. */
export function ChamberHead({ number }: { readonly number: number }) {
  return (
    <th role="rowheader" scope="row">
      <span className="check-card-word">Chamber </span>
      {number}
    </th>
  );
}
