using System.Globalization;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Curves;

/// <summary>Reads a level curve from CSV: commas with decimal points, or semicolons or tabs with either decimal mark.</summary>
/// <param name="profile">The generator whose outputs the file may name.</param>
public sealed class CurveCsvReader(GeneratorProfile profile)
{
    private readonly Dictionary<int, (int Line, TargetPoint? Point)> _outputs = [];
    private readonly List<string> _troubles = [];

    /// <summary>Understands a file's text.</summary>
    /// <returns>Every point; or every line that cannot be understood, and why.</returns>
    public CurveCsvImport Read(string text)
    {
        var (body, separator, skipped) = Separated(text.TrimStart('\uFEFF'));
        if (body.Trim().Length == 0)
            return Refuse("line 1: the file is empty; it needs a first line such as output,level_mv,tolerance_db");
        if (body.Contains('\uFFFD', StringComparison.Ordinal))
            return Refuse($"line {skipped + 1 + body.Split('\uFFFD')[0].Count(sign => sign == '\n')}: the file is not UTF-8; save it as UTF-8");
        using var reader = Sep.New(separator).Reader(options => options with
        {
            DisableColCountCheck = true,
            Unescape = true,
            HasHeader = false,
            CultureInfo = CultureInfo.InvariantCulture,
        }).FromText(body);
        CurveCsvHead? head = null;
        var numbers = new CurveNumbers(commaAllowed: separator != ',');
        foreach (var row in reader)
        {
            var cells = Cells(row);
            var line = row.LineNumberFrom + skipped;
            if (cells.All(cell => cell.Length == 0))
                continue;
            if (head is null)
            {
                head = CurveCsvHead.Of(cells);
                if (head.Trouble.Length > 0)
                    return Refuse($"line {skipped + FirstLine(body)}: {head.Trouble}");
            }
            else
            {
                Take(cells, line, head, numbers);
            }
        }

        return Import(head!);
    }

    // Spreadsheets write semicolons where the comma is the decimal mark; some begin with a line that says so.
    private static (string Body, char Separator, int Skipped) Separated(string text)
    {
        var first = text.Split('\n', 2)[0].TrimEnd('\r');
        if (first.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && first.Length == 5)
            return (text.Split('\n', 2).ElementAtOrDefault(1) ?? "", first[4], 1);
        var head = text.Split('\n').FirstOrDefault(line => line.Trim().Length > 0) ?? "";
        return (text, head.Contains(';', StringComparison.Ordinal) ? ';' : head.Contains('\t', StringComparison.Ordinal) ? '\t' : ',', 0);
    }

    // Sep 0.17.1 counts the first row of a file without a header one line too far.
    private static int FirstLine(string body) => 1 + body.Split('\n').TakeWhile(line => line.Trim().Length == 0).Count();

    private static string[] Cells(SepReader.Row row)
    {
        var cells = new string[row.ColCount];
        for (var index = 0; index < cells.Length; index++)
            cells[index] = row[index].ToString().Trim();
        return cells;
    }

    private void Take(string[] cells, int line, CurveCsvHead head, CurveNumbers numbers)
    {
        if (cells.Length <= Math.Max(Math.Max(head.Output, head.Level), head.Tolerance ?? 0))
            Note(line, $"{cells.Length} cells are too few for the first line's columns; fill the line up");
        else if (TooMany(cells, head) is { } trouble)
            Note(line, trouble);
        else if (OutputIn(cells[head.Output], line) is { } output)
            _outputs.Add(output, (line, PointIn(cells, line, output, head, numbers)));
    }

    // A decimal comma in a file with commas makes two cells of one number.
    private static string? TooMany(string[] cells, CurveCsvHead head) => cells.Length > head.Columns && cells.Skip(head.Columns).Any(cell => cell.Length > 0)
        ? $"{cells.Length} cells where the first line has {head.Columns}; with a decimal comma, separate the cells by semicolons"
        : null;

    private int? OutputIn(string cell, int line)
    {
        if (!int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var output))
            Note(line, $"'{cell}' is not an output's number; write digits only");
        else if (!profile.Outputs.Any(one => one.Number == output))
            Note(line, $"{profile.Name} has no output {output}; it has {profile.Outputs[0].Number} to {profile.Outputs[^1].Number}");
        else if (_outputs.TryGetValue(output, out var before))
            Note(line, $"output {output} stands in line {before.Line} already; keep one of them");
        else
            return output;
        return null;
    }

    private TargetPoint? PointIn(string[] cells, int line, int output, CurveCsvHead head, CurveNumbers numbers)
    {
        if (cells[head.Level].Length == 0)
            return null;
        var (level, wrongLevel) = numbers.Read(cells[head.Level], head.Unit.Least, head.Unit.Most);
        var toleranceCell = head.Tolerance is { } place ? cells[place] : "";
        var (tolerance, wrongTolerance) = toleranceCell.Length == 0
            ? (TargetCurve.UsualToleranceDecibels, null)
            : numbers.Read(toleranceCell, TargetPoint.LeastToleranceDecibels, TargetPoint.MostToleranceDecibels);
        if (wrongLevel is not null)
            Note(line, $"level of output {output}: {wrongLevel}");
        if (wrongTolerance is not null)
            Note(line, $"tolerance of output {output}: {wrongTolerance}");
        return new(output, head.Unit.Millivolts(level), tolerance);
    }

    private void Note(int line, string trouble) => _troubles.Add($"line {line}: {trouble}");

    private CurveCsvImport Import(CurveCsvHead head)
    {
        List<TargetPoint> points = [.. _outputs.Values.Select(one => one.Point).OfType<TargetPoint>().OrderBy(point => point.Output)];
        if (points.Count == 0 && _troubles.Count == 0)
            return Refuse("line 2: no output has a level; write one line an output");
        int[] without = [.. profile.Outputs.Select(output => output.Number).Except(points.Select(point => point.Output))];
        List<string> notes = [];
        if (head.Ignored.Count > 0)
            notes.Add($"passed over: {string.Join(", ", head.Ignored)}");
        if (without.Length > 0)
            notes.Add($"no target for output {NumberList.Of(without)}");
        if (head.Unit.IsShape)
            notes.Add("a shape in dB: only differences between outputs count");
        return _troubles.Count > 0 ? new([], head.Unit, [], _troubles) : new(points, head.Unit, notes, []);
    }

    private static CurveCsvImport Refuse(string trouble) => new([], LevelUnit.All[0], [], [trouble]);
}
