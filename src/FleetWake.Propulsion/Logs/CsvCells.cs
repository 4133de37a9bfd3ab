using System.Text;

namespace FleetWake.Propulsion.Logs;

/// <summary>Parts a line into cells; quotes keep a separator within a cell.</summary>
internal static class CsvCells
{
    /// <summary>What a header is parted by: whichever of tab, semicolon and comma it has most of, the first named at a tie.</summary>
    internal static char Separator(string header) => "\t;,".MaxBy(c => header.Count(h => h == c));

    internal static List<string> Of(string line, char separator)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"') cell.Append(line[++i]);
            else if (c == '"') quoted = !quoted;
            else if (c != separator || quoted) cell.Append(c);
            else
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
        }

        cells.Add(cell.ToString().Trim());
        return cells;
    }
}
