using System.Text;
using Fluid.Ast;
using Fluid.Values;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Refuses what the limits at run time would catch late or not at all.</summary>
internal sealed class TemplateLint : AstVisitor
{
    public const int LongestRange = 500;

    protected override Expression VisitFilterExpression(FilterExpression filterExpression)
    {
        if (!Guarded.Filters.Contains(filterExpression.Name))
            throw new TemplateRefused($"the filter '{filterExpression.Name}' is not allowed");
        return base.VisitFilterExpression(filterExpression);
    }

    protected override Expression VisitRangeExpression(RangeExpression rangeExpression)
    {
        // A range is laid out in memory before the first step is counted.
        if (rangeExpression.From is not LiteralExpression { Value: NumberValue from } || rangeExpression.To is not LiteralExpression { Value: NumberValue to })
            throw new TemplateRefused("a range must have two numbers written out");
        if (to.ToNumberValue() - from.ToNumberValue() > LongestRange) throw new TemplateRefused($"a range is longer than {LongestRange}");
        return base.VisitRangeExpression(rangeExpression);
    }
}

/// <summary>A text that refuses to grow beyond a length.</summary>
internal sealed class BoundedWriter(int most) : StringWriter
{
    public override Encoding Encoding => Encoding.UTF8;

    public override void Write(char value)
    {
        Room(1);
        base.Write(value);
    }

    public override void Write(char[] buffer, int index, int count)
    {
        Room(count);
        base.Write(buffer, index, count);
    }

    public override void Write(ReadOnlySpan<char> buffer)
    {
        Room(buffer.Length);
        base.Write(buffer);
    }

    public override void Write(string? value)
    {
        Room(value?.Length ?? 0);
        base.Write(value);
    }

    public override Task WriteAsync(char value)
    {
        Write(value);
        return Task.CompletedTask;
    }

    public override Task WriteAsync(string? value)
    {
        Write(value);
        return Task.CompletedTask;
    }

    public override Task WriteAsync(char[] buffer, int index, int count)
    {
        Write(buffer, index, count);
        return Task.CompletedTask;
    }

    public override Task WriteAsync(ReadOnlyMemory<char> buffer, CancellationToken cancellationToken = default)
    {
        Write(buffer.Span);
        return Task.CompletedTask;
    }

    private void Room(int more)
    {
        if (GetStringBuilder().Length + more > most) throw new TemplateRefused($"wrote more than {most} characters");
    }
}
