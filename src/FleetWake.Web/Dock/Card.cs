using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Web.Dock;

/// <summary>A boat as a mechanic needs it.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Dock">Its dock; left out while it is not registered.</param>
/// <param name="Water">Its water.</param>
/// <param name="Hire">Whether it may go out, and what releases it.</param>
/// <param name="Attention">What needs a person, most urgent first; on a boat of several engines each begins with the position.</param>
/// <param name="Due">What is due, most overdue first.</param>
/// <param name="UsualLoad">What it carried in its trials.</param>
/// <param name="Positions">Its engine positions.</param>
/// <param name="UpToDate">Whether every record that the office had when the card was asked for is in it. Where it is not, nobody may be told "in hire".</param>
internal sealed record Card(
    string Boat, string Name, string? Dock, WaterType? Water, CardHire Hire, IReadOnlyList<string> Attention, IReadOnlyList<CardDue> Due, UsualLoad? UsualLoad, IReadOnlyList<CardPosition> Positions, bool UpToDate);

/// <summary>Whether a boat may go out.</summary>
/// <param name="Word">The strictest of the reasons.</param>
/// <param name="Reasons">What keeps it, strictest first.</param>
/// <param name="LiftedOn">Day on which somebody put it back in hire in spite of something that is still open; left out where nobody did.</param>
internal sealed record CardHire(HireWord Word, IReadOnlyList<CardReason> Reasons, DateOnly? LiftedOn);

/// <summary>What keeps a boat.</summary>
/// <param name="Sentence">What it is.</param>
/// <param name="ReleasedBy">What releases the boat.</param>
/// <param name="Word">What it means for hire.</param>
/// <param name="Position">The position, where it is about one.</param>
internal sealed record CardReason(string Sentence, string ReleasedBy, HireWord Word, Position? Position);

/// <summary>Something due.</summary>
/// <param name="What">What is to be done.</param>
/// <param name="Due">Dock's date by which.</param>
/// <param name="Why">Why.</param>
/// <param name="Overdue">The date has passed.</param>
/// <param name="RuleId">By which rule.</param>
/// <param name="Kind">Kind of duty.</param>
/// <param name="Position">The position, where it is about one.</param>
/// <param name="TakenBy">Who will see to it.</param>
internal sealed record CardDue(string What, DateOnly Due, string Why, bool Overdue, string RuleId, DutyKind Kind, Position? Position, string? TakenBy);

/// <summary>What a boat carried in its last wide-open trials: half of them more, half less.</summary>
/// <param name="People">People aboard; left out where nobody counted.</param>
/// <param name="LoadKilograms">Load beside people and fuel [kg]; left out where nobody told.</param>
/// <param name="Trials">How many trials that is of.</param>
internal sealed record UsualLoad(double? People, double? LoadKilograms, int Trials);

/// <summary>An engine position.</summary>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that hangs there.</param>
/// <param name="Hours">Its hour meter.</param>
/// <param name="Mounting">The prop fitted.</param>
/// <param name="Standing">Where it stands in its band.</param>
/// <param name="Reference">What brings a trial to reference air; left out where no air correction holds (a supercharged engine, or none known).</param>
/// <param name="LastTrial">The last trial and its conditions.</param>
/// <param name="OpenStrikes">Strikes that nothing has cleared.</param>
/// <param name="Fits">Spares held against the engine, those at this dock first, and then best first.</param>
internal sealed record CardPosition(
    Position Position, CardEngine? Engine, CardHours? Hours, CardMounting? Mounting, CardStanding? Standing, Reference? Reference, LastTrial? LastTrial,
    IReadOnlyList<OpenStrike> OpenStrikes, IReadOnlyList<CardFit> Fits);

/// <summary>An engine. What its manual says is left out while nobody stated it: there is no default.</summary>
/// <param name="Engine">Its id.</param>
/// <param name="Model">Model name.</param>
/// <param name="RatedBand">Rated band.</param>
/// <param name="GearRatio">Engine turns per prop turn.</param>
/// <param name="Torque">Nut torque.</param>
/// <param name="Fastening">What holds the prop.</param>
/// <param name="TachometerStep">Smallest step of its tachometer [RPM].</param>
/// <param name="TachometerErrorPercent">By how much its tachometer shows too much, by its last check [%].</param>
internal sealed record CardEngine(
    string Engine, string? Model, CardBand? RatedBand, double? GearRatio, CardTorque? Torque, CardFastening? Fastening, double? TachometerStep, double? TachometerErrorPercent);

/// <summary>A rated band.</summary>
/// <param name="Low">Its bottom [RPM].</param>
/// <param name="High">Its top [RPM].</param>
internal sealed record CardBand(double Low, double High);

/// <summary>A torque in the manual's unit and in both.</summary>
/// <param name="Value">In the manual's unit.</param>
/// <param name="Unit">That unit.</param>
/// <param name="NewtonMetres">In newton metres.</param>
/// <param name="PoundForceFeet">In pound-force feet.</param>
internal sealed record CardTorque(double Value, TorqueUnit Unit, double NewtonMetres, double PoundForceFeet);

/// <summary>What holds a prop.</summary>
/// <param name="Kind">Nut, washer or pin.</param>
/// <param name="TorqueRange">Torque, or its range.</param>
/// <param name="Slots">Slots that a castle nut may be tightened on to line up, at most.</param>
/// <param name="Retorque">Whether a re-torque after the first outing applies.</param>
internal sealed record CardFastening(Fastening Kind, CardTorqueRange? TorqueRange, int? Slots, bool? Retorque);

/// <summary>A torque with its range.</summary>
/// <param name="Low">The torque, or the bottom of its range.</param>
/// <param name="High">The top of the range; left out when the manual gives one number.</param>
internal sealed record CardTorqueRange(CardTorque Low, CardTorque? High);

/// <summary>An hour meter.</summary>
/// <param name="Value">What it showed at its last credible reading [h].</param>
/// <param name="On">Dock's date of that.</param>
internal sealed record CardHours(double Value, DateOnly On);

/// <summary>A prop that is fitted. For slip: V_theoretical [kn] = RPM as turned / gear ratio * pitchInches * 0.0254 * 60 / 1852, and slip = 1 - V / V_theoretical, never clamped.</summary>
/// <param name="Mounting">Id of the mounting.</param>
/// <param name="Prop">Its tag.</param>
/// <param name="DiameterInches">Diameter now [in].</param>
/// <param name="PitchInches">Pitch now [in].</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Material">Material.</param>
/// <param name="Rotation">Which way it turns.</param>
/// <param name="FittedOn">Dock's date of fitting.</param>
/// <param name="RetorqueDue">Dock's date by which the nut is to be tightened again.</param>
internal sealed record CardMounting(
    string Mounting, string Prop, double? DiameterInches, double? PitchInches, int? Blades, PropMaterial? Material, Rotation? Rotation, DateOnly FittedOn, DateOnly? RetorqueDue);

/// <summary>Where a position stands, in the words of the pictures and the digest.</summary>
/// <param name="Sign">A shape that says the same as the word.</param>
/// <param name="Word">In two or three words.</param>
/// <param name="Sentence">With the numbers.</param>
/// <param name="MarginRpm">Distance to the nearer edge, negative outside [RPM].</param>
/// <param name="Edge">Which edge that is.</param>
/// <param name="Outside">Reading or trials together lie outside the band.</param>
/// <param name="DriftSentence">Its drift.</param>
/// <param name="ExitSentence">When it leaves its band.</param>
internal sealed record CardStanding(
    string Sign, string Word, string Sentence, double? MarginRpm, BandEdge? Edge, bool Outside, string DriftSentence, string ExitSentence);

/// <summary>The last trial at a position, from which the next is pre-filled.</summary>
/// <param name="On">Dock's date.</param>
/// <param name="Throttle">How far the throttle was open.</param>
/// <param name="Rpm">Mean RPM as read.</param>
/// <param name="SpeedKnots">Mean speed [kn].</param>
/// <param name="People">People aboard.</param>
/// <param name="LoadKilograms">Load beside people and fuel [kg].</param>
/// <param name="FuelPercent">Fuel level [%].</param>
/// <param name="AirTemperatureCelsius">Air temperature [deg C].</param>
/// <param name="PressureHectopascals">Station pressure [hPa].</param>
/// <param name="HumidityPercent">Relative humidity [%].</param>
/// <param name="WindKnots">Wind [kn].</param>
/// <param name="WaveHeightMetres">Waves [m].</param>
/// <param name="TrimDegrees">Trim [degrees].</param>
/// <param name="WaterDepthMetres">Depth of water [m].</param>
internal sealed record LastTrial(
    DateOnly On, Throttle Throttle, double? Rpm, double? SpeedKnots, int? People, double? LoadKilograms, double? FuelPercent, double? AirTemperatureCelsius,
    double? PressureHectopascals, double? HumidityPercent, double? WindKnots, double? WaveHeightMetres, double? TrimDegrees, double? WaterDepthMetres);

/// <summary>A spare held against the engine.</summary>
/// <param name="Prop">Its tag.</param>
/// <param name="Size">Diameter and pitch in words.</param>
/// <param name="Dock">Name of the dock where it lies.</param>
/// <param name="Here">It lies at the phone's dock.</param>
/// <param name="Answer">Whether it fits.</param>
/// <param name="Why">What speaks against it or is not stated; empty when it fits as it is.</param>
internal sealed record CardFit(string Prop, string? Size, string? Dock, bool Here, FitAnswer Answer, string Why);
