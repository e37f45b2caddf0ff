using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Curves;

/// <summary>The first line of a curve file: where its columns are, in which unit its levels; or what is wrong with it.</summary>
/// <param name="Columns">How many columns there are.</param>
/// <param name="Output">The place of the output's column.</param>
/// <param name="Level">The place of the level's column.</param>
/// <param name="Tolerance">The place of the tolerance's column; none where there is none.</param>
/// <param name="Unit">The unit of the levels.</param>
/// <param name="Ignored">Heads of columns that a curve has no use for.</param>
/// <param name="Trouble">What is wrong and what to do; empty where nothing is.</param>
internal sealed record CurveCsvHead(
    int Columns, int Output, int Level, int? Tolerance, LevelUnit Unit, IReadOnlyList<string> Ignored, string Trouble)
{
    private static readonly string Units = string.Join(", ", LevelUnit.All.Select(unit => unit.Symbol));

    /// <summary>Understands the heads.</summary>
    internal static CurveCsvHead Of(IReadOnlyList<string> heads)
    {
        List<CurveColumn> columns = [.. heads.Select(CurveColumn.Of)];
        var unit = columns.Where(column => column.Kind == CurveColumnKind.Level).Select(column => LevelUnit.Of(column.Unit)).FirstOrDefault();
        int Place(CurveColumnKind kind) => columns.FindIndex(column => column.Kind == kind);
        return new(
            columns.Count,
            Place(CurveColumnKind.Output),
            Place(CurveColumnKind.Level),
            Place(CurveColumnKind.Tolerance) is >= 0 and var place ? place : null,
            unit ?? LevelUnit.All[0],
            [.. columns.Where(column => column.Kind == CurveColumnKind.Other && column.Head.Trim().Length > 0).Select(column => column.Head.Trim())],
            TroubleIn(columns) ?? "");
    }

    private static string? TroubleIn(List<CurveColumn> columns) =>
        Twice(columns) ?? Misspelt(columns)
        ?? Missing(columns, CurveColumnKind.Output, "name the column with the output's number 'output'")
        ?? Missing(columns, CurveColumnKind.Level, $"name the column with the level and its unit, such as 'level_mv'; units are {Units}")
        ?? UnitTrouble(columns.First(column => column.Kind == CurveColumnKind.Level))
        ?? ToleranceTrouble(columns.Find(column => column.Kind == CurveColumnKind.Tolerance));

    private static string? Twice(List<CurveColumn> columns) => columns
        .Where(column => column.Kind != CurveColumnKind.Other).GroupBy(column => column.Kind)
        .Where(group => group.Count() > 1).Select(group => $"the columns {List(group)} both say the {Word(group.Key)}; keep one of them")
        .FirstOrDefault();

    private static string? Misspelt(List<CurveColumn> columns) => columns
        .Where(column => column.Kind == CurveColumnKind.Other)
        .Select(column => (column.Head, Meant: column.ProbablyMeant))
        .Where(one => one.Meant is not null && columns.TrueForAll(column => column.Kind != CurveColumn.Of(one.Meant).Kind))
        .Select(one => $"the column '{one.Head.Trim()}' is not known; if '{one.Meant}' is meant, write it so, else give it another name")
        .FirstOrDefault();

    private static string? Missing(List<CurveColumn> columns, CurveColumnKind kind, string whatToDo) => columns.Exists(column => column.Kind == kind)
        ? null : $"no column for the {Word(kind)}, found {List(columns)}; {whatToDo}";

    private static string? UnitTrouble(CurveColumn level) => LevelUnit.Of(level.Unit) is not null ? null
        : level.Unit.Length == 0 ? $"the column '{level.Head.Trim()}' does not say its unit; write one behind it, such as 'level_mv'; units are {Units}"
        : $"'{level.Unit}' is no unit of level here; units are {Units}, all rms";

    private static string? ToleranceTrouble(CurveColumn? tolerance) =>
        tolerance is null || tolerance.Unit.Length == 0 || tolerance.Unit.Equals("dB", StringComparison.OrdinalIgnoreCase) ? null
        : $"the tolerance is in '{tolerance.Unit}'; write it in dB, from 0 to {TargetPoint.MostToleranceDecibels} (12 % of a level is about 1 dB)";

    private static string Word(CurveColumnKind kind) => kind switch
    {
        CurveColumnKind.Output => "output's number",
        CurveColumnKind.Level => "level",
        _ => "tolerance",
    };

    private static string List(IEnumerable<CurveColumn> columns) => string.Join(", ", columns.Select(column => $"'{column.Head.Trim()}'"));
}
