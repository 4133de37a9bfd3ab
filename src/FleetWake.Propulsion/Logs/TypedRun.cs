namespace FleetWake.Propulsion.Logs;

/// <summary>A run as somebody typed it, in the units of the quantities.</summary>
internal sealed class TypedRun
{
    internal double? Rpm { get; private set; }

    internal double? Knots { get; private set; }

    internal double? HeadingDegrees { get; private set; }

    internal double? HeldSeconds { get; private set; }

    internal bool Limiter { get; set; }

    internal bool Ventilated { get; set; }

    /// <summary>Takes a number as it was written; returns why not when it cannot be one of a run.</summary>
    internal string? Take(CsvColumn column, double written)
    {
        if (Plausible.OfRun(column, written) is { } reason) return reason;
        var value = column.Value(written);
        switch (column.Quantity)
        {
            case CsvQuantity.Rpm: Rpm = value; break;
            case CsvQuantity.Knots: Knots = value; break;
            case CsvQuantity.Heading: HeadingDegrees = value; break;
            case CsvQuantity.HeldSeconds: HeldSeconds = value; break;
        }

        return null;
    }
}
