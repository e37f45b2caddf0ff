using System.Globalization;
using AutoSweep.Core;
using nietras.SeparatedValues;

namespace AutoSweep.Sim.Scoring;

/// <summary>Reads the CSV files that a job leaves.</summary>
internal static class ResultRows
{
    public static IReadOnlyList<SweepRow> Sweeps(string path) => Read(path, row => new SweepRow(
        Whole(row, "output"), Number(row, "peak_pf"), Number(row, "half_width_pf"), Whole(row, "readings"), row["stop_reason"].ToString()));

    public static IReadOnlyList<SurveyRow> Survey(string path) => Read(path, row => new SurveyRow(
        Whole(row, "output"), Number(row, "tone_hz"), Number(row, "level_mv"), row["flags"].ToString()));

    private delegate T FromRow<T>(SepReader.Row row);

    private static List<T> Read<T>(string path, FromRow<T> read)
    {
        try
        {
            using var reader = Sep.New(',').Reader(options => options with { Unescape = true }).FromFile(path);
            var rows = new List<T>();
            foreach (var row in reader) rows.Add(read(row));
            return rows;
        }
        catch (Exception fault) when (
            fault is IOException or UnauthorizedAccessException or FormatException or KeyNotFoundException or ArgumentException)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"{path}: {fault.Message}", "a results file of a job",
                "Give the job's own sweeps.csv and survey.csv.", fault);
        }
    }

    // An empty field is a value that the job could not give.
    private static double Number(SepReader.Row row, string column) => row[column].Span is { Length: > 0 } text
        ? double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)
        : double.NaN;

    private static int Whole(SepReader.Row row, string column) =>
        int.Parse(row[column].Span, NumberStyles.Integer, CultureInfo.InvariantCulture);
}
