using FleetWake.Logbook.Office;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office;

/// <summary>An amount of money as somebody reads numbers, with its currency behind it.</summary>
internal static class MoneyLine
{
    public static string Of(Money money, Measures measures)
    {
        var whole = measures.Number((double)decimal.Truncate(money.Amount));
        var cents = Math.Abs(money.Amount - decimal.Truncate(money.Amount));

        // Cents stand as two figures: 1,450.50, not 1,450.5.
        var point = measures.Number(0.5, 1)[^2];
        return cents == 0 ? $"{whole}\u00A0{money.Currency}" : $"{whole}{point}{cents.ToString(cents * 100 % 1 == 0 ? "0.00" : "0.####", System.Globalization.CultureInfo.InvariantCulture)[2..]}\u00A0{money.Currency}";
    }
}
