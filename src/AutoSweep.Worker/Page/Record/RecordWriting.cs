using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Record;

/// <summary>For whom a record is written.</summary>
public sealed class RecordWriting
{
    private const int LongestLine = 120;

    /// <summary>For whom the work was done; empty for a line to fill in by hand.</summary>
    public string Customer { get; set; } = "";

    /// <summary>The instrument that the generator belongs to, with its serial number; empty for a line to fill in by hand.</summary>
    public string Instrument { get; set; } = "";

    /// <summary>What the job's latest record says, so that nobody types it twice; empty fields where there is none.</summary>
    public static RecordWriting Before(string folder)
    {
        try
        {
            using var written = JsonDocument.Parse(File.ReadAllText(ReportFiles.In(folder).Json));
            return new() { Customer = Field(written, "customer"), Instrument = Field(written, "instrument") };
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or JsonException or InvalidOperationException)
        {
            // A record can always be written anew: what cannot be read is typed again.
            return new();
        }
    }

    /// <summary>Writes the record of a job into its folder; takes seconds, so never on a screen's own turn.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="options">Where shop and stock are.</param>
    /// <param name="clock">The wall clock.</param>
    /// <exception cref="BenchFaultException">A field, shop.json or the ledger cannot be used, or the folder cannot be written.</exception>
    public async Task WriteAsync(string folder, DeskOptions options, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(clock);
        var job = JobReading.Read(folder);
        await ReportFiles.WriteAsync(new(job, clock.GetLocalNow())
        {
            Customer = TypedField.TextOrNone(Customer, "the customer", LongestLine),
            Instrument = TypedField.TextOrNone(Instrument, "the instrument", LongestLine),
            Shop = File.Exists(options.Shop) ? ShopSettings.Read(options.Shop) : null,
            Stock = JobLedger.Find(job, options.Ledger, clock)?.Read(),
        });
    }

    private static string Field(JsonDocument written, string name) =>
        written.RootElement.TryGetProperty(name, out var field) && field.ValueKind == JsonValueKind.String ? field.GetString()! : "";
}
