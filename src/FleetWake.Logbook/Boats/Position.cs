namespace FleetWake.Logbook;

/// <summary>Where on the transom an engine hangs.</summary>
public enum Position
{
    /// <summary>The only engine.</summary>
    Single,

    /// <summary>Left, looking forward.</summary>
    Port,

    /// <summary>Right, looking forward.</summary>
    Starboard,

    /// <summary>Between two others.</summary>
    Centre,
}

/// <summary>The water a boat works in.</summary>
public enum WaterType
{
    /// <summary>Lake or river.</summary>
    Fresh,

    /// <summary>Sea.</summary>
    Salt,

    /// <summary>River mouth.</summary>
    Brackish,

    /// <summary>Water that carries sand or silt, which wears blades.</summary>
    Silty,
}
