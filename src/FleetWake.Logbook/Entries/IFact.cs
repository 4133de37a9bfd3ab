namespace FleetWake.Logbook.Entries;

/// <summary>Something that happened, as it was told. Facts are never changed; see <see cref="Retracted"/> and <see cref="Entry.Amends"/>.</summary>
public interface IFact
{
    /// <summary>Who told it, on which device, when it happened and when it reached us.</summary>
    Entry Entry { get; }
}

/// <summary>A fact that makes its boat, engine or prop known. Records that came before it were held for it.</summary>
public interface IRegistration : IFact;

/// <summary>A fact of a boat at one engine position.</summary>
public interface IAtPosition : IFact
{
    /// <summary>The boat's id.</summary>
    string Boat { get; }

    /// <summary>The engine position on the boat.</summary>
    Position Position { get; }
}

/// <summary>A fact at a position that may carry the engine's hour meter as read.</summary>
public interface IMetered : IAtPosition
{
    /// <summary>Hour-meter reading of the engine at the position [h], when somebody read it.</summary>
    double? Hours { get; }
}
