namespace FleetWake.Demo;

/// <summary>One boat of the fleet.</summary>
/// <param name="Number">Its number; its props are tagged with it.</param>
/// <param name="Name">Its name.</param>
/// <param name="Dock">Its home dock.</param>
/// <param name="Model">Its engine, or both of them.</param>
/// <param name="TachometerStep">Smallest step of its tachometer [RPM].</param>
/// <param name="YearHours">Engine hours in a year [h].</param>
/// <param name="HoursAtStart">Hour meter at the start of the record [h].</param>
/// <param name="Rig">One engine or two, aluminium or stainless props.</param>
internal sealed record BoatLine(
    int Number, string Name, Dock Dock, EngineModel Model, double TachometerStep, double YearHours, double HoursAtStart, Rig Rig = Rig.Usual)
{
    public string Id { get; } = Name.ToLowerInvariant();

    public bool Twin => Rig is Rig.Twin or Rig.SteelTwin;

    /// <summary>Stainless passes a blow on, so a look at it goes on to shaft, seal and gear oil.</summary>
    public IReadOnlyList<string>? Seen => Material == "stainless" ? ["prop", "shaft", "seal", "gear_oil"] : null;

    public string Material => Rig is Rig.Steel or Rig.SteelTwin ? "stainless" : "aluminium";

    public IReadOnlyList<string> Positions => Twin ? ["port", "starboard"] : ["single"];

    public string Engine(string position) => Twin ? $"e-{Id}-{position}" : $"e-{Id}";

    /// <summary>Tag of the prop it came with.</summary>
    public string Tag(string position) => $"P-{(position == "starboard" ? 200 : 100) + Number}";

    /// <summary>Twins turn opposite ways: the port prop to the left.</summary>
    public static string Rotation(string position) => position == "port" ? "left" : "right";
}

/// <summary>How a boat is rigged.</summary>
internal enum Rig
{
    Usual,
    Steel,
    Twin,
    SteelTwin,
}

/// <summary>The fleet.</summary>
internal static class Fleet
{
    public static IReadOnlyList<BoatLine> All { get; } =
    [
        //   name            dock              engine         step  h/year  meter
        new(1, "Petrel", Docks.OldMole, EngineModels.E50, 50, 210, 184.2),
        new(2, "Gannet", Docks.OldMole, EngineModels.E150, 10, 260, 402.7, Rig.Steel),
        new(3, "Fulmar", Docks.OldMole, EngineModels.E50, 50, 195, 96.0),
        new(4, "Shearwater", Docks.OldMole, EngineModels.E150, 10, 240, 318.5, Rig.SteelTwin),
        new(5, "Puffin", Docks.OldMole, EngineModels.E15, 100, 150, 61.3),
        new(6, "Razorbill", Docks.OldMole, EngineModels.E50, 50, 205, 240.9),
        new(7, "Guillemot", Docks.OldMole, EngineModels.E115, 10, 180, 155.4),
        new(8, "Tern", Docks.OldMole, EngineModels.E50, 100, 220, 330.1),
        new(9, "Skua", Docks.OldMole, EngineModels.E200, 10, 170, 88.8, Rig.Steel),
        new(10, "Cormorant", Docks.OldMole, EngineModels.E115, 10, 230, 412.6),
        new(11, "Shag", Docks.OldMole, EngineModels.E50, 10, 215, 271.0),
        new(12, "Prion", Docks.OldMole, EngineModels.E10, 100, 140, 47.5),
        new(13, "Albatross", Docks.OldMole, EngineModels.E200, 10, 190, 120.2, Rig.SteelTwin),
        new(14, "Noddy", Docks.OldMole, EngineModels.E50, 50, 200, 199.7),
        new(15, "Booby", Docks.OldMole, EngineModels.E50, 100, 185, 143.3),
        new(16, "Pelican", Docks.OldMole, EngineModels.E50, 10, 225, 355.0),
        new(17, "Oystercatcher", Docks.KittiwakeQuay, EngineModels.E50, 50, 200, 228.4),
        new(18, "Turnstone", Docks.KittiwakeQuay, EngineModels.E50, 50, 190, 176.1),
        new(19, "Dunlin", Docks.KittiwakeQuay, EngineModels.E15, 50, 160, 72.6),
        new(20, "Sanderling", Docks.KittiwakeQuay, EngineModels.E10, 10, 240, 38.4),
        new(21, "Whimbrel", Docks.KittiwakeQuay, EngineModels.E50, 10, 195, 290.3),
        new(22, "Curlew", Docks.KittiwakeQuay, EngineModels.E115, 10, 210, 204.8),
        new(23, "Godwit", Docks.KittiwakeQuay, EngineModels.E50, 50, 215, 112.9),
        new(24, "Dotterel", Docks.KittiwakeQuay, EngineModels.E50, 100, 180, 260.5),
        new(25, "Plover", Docks.KittiwakeQuay, EngineModels.E15, 10, 200, 84.0),
        new(26, "Avocet", Docks.KittiwakeQuay, EngineModels.E50, 10, 220, 301.2),
        new(27, "Stilt", Docks.KittiwakeQuay, EngineModels.E50, 50, 190, 150.6),
        new(28, "Knot", Docks.KittiwakeQuay, EngineModels.E10, 10, 215, 52.2),
        new(29, "Phalarope", Docks.KittiwakeQuay, EngineModels.E115, 50, 175, 230.7, Rig.Twin),
        new(30, "Auklet", Docks.KittiwakeQuay, EngineModels.E15, 100, 145, 39.9),
        new(31, "Murre", Docks.SallowMere, EngineModels.E50, 50, 170, 205.3),
        new(32, "Dovekie", Docks.SallowMere, EngineModels.E50, 10, 180, 0.6),
        new(33, "Eider", Docks.SallowMere, EngineModels.E115, 10, 185, 148.0),
        new(34, "Scoter", Docks.SallowMere, EngineModels.E50, 50, 175, 226.6),
        new(35, "Merganser", Docks.SallowMere, EngineModels.E115, 50, 165, 170.4, Rig.Twin),
        new(36, "Grebe", Docks.SallowMere, EngineModels.E15, 50, 150, 58.1),
        new(37, "Heron", Docks.SallowMere, EngineModels.E115, 10, 235, 190.9, Rig.Twin),
        new(38, "Egret", Docks.SallowMere, EngineModels.E50, 50, 160, 133.7),
        new(39, "Diver", Docks.SallowMere, EngineModels.E15, 100, 140, 44.8),
        new(40, "Smew", Docks.SallowMere, EngineModels.E50, 50, 170, 219.5),
        new(41, "Pochard", Docks.SallowMere, EngineModels.E50, 50, 150, 612.0),
        new(42, "Wigeon", Docks.SallowMere, EngineModels.E50, 50, 165, 201.7),
        new(43, "Teal", Docks.SallowMere, EngineModels.E15, 50, 150, 66.0),
        new(44, "Redshank", Docks.KittiwakeQuay, EngineModels.E50, 50, 190, 187.3),
        new(45, "Ruff", Docks.KittiwakeQuay, EngineModels.E50, 50, 205, 242.8),
    ];

    /// <summary>The boat of this name.</summary>
    public static BoatLine Named(string name) => All.Single(b => b.Name == name);
}
