using System.Globalization;
using System.Text;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>One method that R knows too: the inputs it is told, and what this program makes of them.</summary>
/// <param name="name">The name of its input file and of its results.</param>
/// <param name="against">What R does, for people.</param>
/// <param name="tolerance">The largest difference allowed, relative to R's number or to the number's own scale.</param>
internal sealed class OracleMethod(string name, string against, double tolerance)
{
    private readonly Dictionary<string, (double Value, double Scale)> _ours = [];
    private readonly Dictionary<string, StringBuilder> _tables = [];

    internal string Name { get; } = name;

    internal string Against { get; } = against;

    internal double Tolerance { get; } = tolerance;

    internal int Cases { get; set; }

    internal IReadOnlyDictionary<string, (double Value, double Scale)> Ours => _ours;

    internal IEnumerable<(string File, string Text)> Tables => _tables.Select(t => (t.Key, t.Value.ToString()));

    /// <summary>A row of an input file; its columns are named at the first.</summary>
    internal void Tell(string file, string columns, params IEnumerable<double> row)
    {
        if (!_tables.TryGetValue(file, out var text)) _tables[file] = text = new StringBuilder(columns).Append('\n');
        text.AppendJoin(',', row.Select(x => double.IsNaN(x) ? "NA" : x.ToString("R", CultureInfo.InvariantCulture))).Append('\n');
    }

    /// <summary>A number that this program found.</summary>
    /// <param name="key">Its name, the same as in oracle.R.</param>
    /// <param name="value">The number.</param>
    /// <param name="scale">A difference is held against this where R's number is smaller; 0 for the number itself.</param>
    internal void Found(string key, double value, double scale = 0) => _ours.Add(key, (value, scale));

    /// <summary>The largest relative difference, and where; infinite when one side has a number that the other has not.</summary>
    internal (double Difference, string Key) Compared(IReadOnlyDictionary<string, double> theirs)
    {
        var worst = (Difference: 0.0, Key: "-");
        foreach (var key in _ours.Keys.Union(theirs.Keys))
        {
            var difference = double.PositiveInfinity;
            if (_ours.TryGetValue(key, out var own) && theirs.TryGetValue(key, out var their))
                difference = own.Value == their ? 0 : Math.Abs(own.Value - their) / Math.Max(Math.Abs(their), own.Scale);
            if (!(difference <= worst.Difference)) worst = (double.IsNaN(difference) ? double.PositiveInfinity : difference, key);
        }

        return worst;
    }
}
