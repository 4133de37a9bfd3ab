namespace FleetWake.Web.Office.Fleet;

/// <summary>States as the style sheet names them: each has a shape of its own.</summary>
internal static class FleetWords
{
    public static string Css(this FleetState state) => state switch
    {
        FleetState.Out => "out",
        FleetState.LookFirst => "look",
        FleetState.Pending => "pending",
        FleetState.InHire => "in",
        FleetState.LaidUp => "laid",
        _ => "left",
    };
}
