using System.Globalization;
using System.Text.RegularExpressions;

namespace FleetWake.Logbook.Entries;

/// <content>Calendar dates, amounts of money, and values that may be left out.</content>
public sealed partial class Check
{
    /// <summary>More than any bill of a small fleet; a larger number is a slip of the pen.</summary>
    private const decimal MostAmount = 100_000_000m;

    /// <summary>Smallest unit that a currency of ISO 4217 counts in is a ten-thousandth.</summary>
    private const int MostDecimals = 4;

    /// <summary>An optional calendar date, e.g. <c>2026-06-26</c>.</summary>
    public DateOnly? Date(string? value, string field)
    {
        if (value is null) return null;
        if (DateOnly.TryParseExact(value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) && date.Year is >= 1950 and < 2200) return date;
        Refuse(field, "not_a_date", $"\"{Short(value)}\" is not a date: give year, month and day as in 2026-06-26");
        return null;
    }

    /// <summary>An optional calendar date by which something is due, which cannot lie before the record that sets it.</summary>
    public DateOnly? DueDate(string? value, Entry? entry, string field)
    {
        var date = Date(value, field);
        if (date < entry?.Date()) Refuse(field, "before_the_record", $"{date:yyyy-MM-dd} lies before the day of the record: check the date");
        return date;
    }

    /// <summary>A required amount of money with its currency.</summary>
    public (decimal Amount, string Currency) Amount(decimal? amount, string? currency, string field = "/amount", string currencyField = "/currency")
    {
        if (amount is null) Refuse(field, "missing", "missing: give the amount");
        if (currency is null) Refuse(currencyField, "missing", "missing: give the currency, three capital letters such as NOK");
        else if (!CurrencyPattern().IsMatch(currency)) Refuse(currencyField, "not_a_currency", $"\"{Short(currency)}\" is not a currency: give three capital letters such as NOK");
        if (amount is not { } given) return (0, "");
        if (given is < 0 or > MostAmount)
            Refuse(field, "out_of_range", $"{given.ToString(CultureInfo.InvariantCulture)} cannot be: give 0 to {MostAmount.ToString(CultureInfo.InvariantCulture)}");
        else if (decimal.Round(given, MostDecimals) != given)
            Refuse(field, "too_many_decimals", $"no currency counts finer than {MostDecimals} decimals: round the amount");
        return (given, currency ?? "");
    }

    /// <summary>An optional amount of money with its currency; both or neither.</summary>
    public (decimal? Amount, string? Currency) MaybeAmount(decimal? amount, string? currency, string field = "/amount", string currencyField = "/currency") =>
        amount is null && currency is null ? (null, null) : Amount(amount, currency, field, currencyField);

    /// <summary>An optional id.</summary>
    public string? MaybeId(string? value, string field) => value is null ? null : Id(value, field);

    /// <summary>An optional word of an enumeration.</summary>
    public T? MaybeOneOf<T>(string? word, string field)
        where T : struct, Enum =>
        word is null ? null : OneOf<T>(word, field);

    /// <summary>An optional whole number within limits.</summary>
    public int? MaybeWhole(int? value, string field, int least, int most, string unit) => (int?)Maybe(value, field, least, most, unit);

    /// <summary>A required id of another entry.</summary>
    public Guid EntryId(Guid? value, string field, string how)
    {
        var id = Required(value, field, how);
        if (value == Guid.Empty) Refuse(field, "empty_id", "an all-zero UUID is no entry id");
        return id;
    }

    [GeneratedRegex(@"\A[A-Z]{3}\z")]
    private static partial Regex CurrencyPattern();
}
