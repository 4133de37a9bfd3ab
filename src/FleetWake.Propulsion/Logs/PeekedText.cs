namespace FleetWake.Propulsion.Logs;

/// <summary>A text whose beginning has been looked at and is still given again. Does not close what it reads.</summary>
internal sealed class PeekedText : TextReader
{
    private const int Length = 4096;

    private readonly TextReader _rest;
    private int _at;

    internal PeekedText(TextReader text)
    {
        _rest = text;
        var buffer = new char[Length];
        var count = text.ReadBlock(buffer, 0, Length);
        var skip = count > 0 && buffer[0] == '\uFEFF' ? 1 : 0; // a byte order mark that the caller left in
        Beginning = new string(buffer, skip, count - skip);
    }

    internal string Beginning { get; }

    public override int Peek() => _at < Beginning.Length ? Beginning[_at] : _rest.Peek();

    public override int Read() => _at < Beginning.Length ? Beginning[_at++] : _rest.Read();

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        if (_at >= Beginning.Length) return _rest.Read(buffer);
        var count = Math.Min(buffer.Length, Beginning.Length - _at);
        Beginning.AsSpan(_at, count).CopyTo(buffer);
        _at += count;
        return count;
    }
}
