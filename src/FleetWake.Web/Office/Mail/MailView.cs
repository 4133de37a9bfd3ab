using System.Globalization;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;

namespace FleetWake.Web.Office.Mail;

/// <summary>What the page of mail shows.</summary>
/// <param name="Lines">The messages, newest first.</param>
/// <param name="Next">Where the next page begins; null on the last.</param>
/// <param name="Filter">Which messages.</param>
/// <param name="Recipients">Everybody who receives, by address.</param>
/// <param name="Docks">Docks by id, with their names.</param>
/// <param name="CanAsk">Whether an address can be asked: the program knows the address under which it is reached.</param>
public sealed record MailView(
    IReadOnlyList<MailLine> Lines, string? Next, MailFilter Filter, IReadOnlyList<Recipient> Recipients, IReadOnlyList<(string Dock, string Name)> Docks, bool CanAsk)
{
    /// <summary>Addresses that take no mail, each once.</summary>
    public IReadOnlyList<Recipient> NoMail { get; } = [.. Recipients.Where(r => r is { NoMailSince: not null, Subscribed: true }).DistinctBy(r => r.Address)];

    /// <summary>The address of a recipient; null when it was forgotten.</summary>
    public string? AddressOf(string recipient) => Recipients.FirstOrDefault(r => r.Id == recipient)?.Address;

    /// <summary>An address of which only the beginning and the domain show, for whoever may read and not decide.</summary>
    public static string Masked(string address) => address.Split('@') is [{ Length: > 0 } name, var domain] ? $"{name[0]}…@{domain}" : "…";

    /// <summary>The place behind a message, as an address names it.</summary>
    public static string Place(MailLine line) => $"{line.IssuedAt.UtcTicks.ToString(CultureInfo.InvariantCulture)}~{line.Message}";

    /// <summary>The place that an address names; null when it names none.</summary>
    public static (DateTimeOffset IssuedAt, string Message)? PlaceOf(string? text) =>
        text?.Split('~', 2) is [var ticks, var message] && long.TryParse(ticks, NumberStyles.None, CultureInfo.InvariantCulture, out var at) && at <= DateTimeOffset.MaxValue.UtcTicks
            ? (new DateTimeOffset(at, TimeSpan.Zero), message)
            : null;
}
