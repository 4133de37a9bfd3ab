using FleetWake.Store.Records;

namespace FleetWake.Store.Import;

/// <summary>What became of the rows of an import.</summary>
/// <param name="Rows">Rows read.</param>
/// <param name="Recorded">Recorded now.</param>
/// <param name="Held">Recorded now, and waiting for something they name to be registered.</param>
/// <param name="Repeated">Recorded by an earlier run.</param>
/// <param name="Conflict">Recorded before with other content; not changed.</param>
/// <param name="Refused">Not recorded.</param>
public readonly record struct ImportTotals(int Rows, int Recorded, int Held, int Repeated, int Conflict, int Refused)
{
    /// <summary>Rows that are not in the record as they stand in their sheets.</summary>
    public int Bad => Conflict + Refused;

    /// <summary>With one more row: its answer, or null where it came to no record.</summary>
    public ImportTotals And(Answer? answer) => answer switch
    {
        null or { Outcome: Outcome.Refused } => this with { Rows = Rows + 1, Refused = Refused + 1 },
        { Outcome: Outcome.Conflict } => this with { Rows = Rows + 1, Conflict = Conflict + 1 },
        { Repeat: true } => this with { Rows = Rows + 1, Repeated = Repeated + 1 },
        { Outcome: Outcome.Held } => this with { Rows = Rows + 1, Held = Held + 1 },
        _ => this with { Rows = Rows + 1, Recorded = Recorded + 1 },
    };

    /// <inheritdoc/>
    public override string ToString() => $"{Rows} rows: recorded {Recorded}, held {Held}, repeated {Repeated}, conflict {Conflict}, refused {Refused}";
}
