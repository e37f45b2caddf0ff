using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments.Discovery;

/// <summary>Asks who is at a resource: sends <c>*IDN?</c>, and nothing else.</summary>
/// <remarks>A serial line is tried with the settings of every driver and of the fixture, so several times at several speeds. What hangs there and
/// is no instrument may act on it: only for resources that a person has named or agreed to.</remarks>
/// <param name="options">Clock, log, links, drivers.</param>
public sealed class InstrumentInquiry(InstrumentBenchOptions options)
{
    // An identity is answered within milliseconds; a second allows for a slow line. One try: the next settings are the retry.
    private static readonly ExchangeOptions OneTry = new() { QueryTimeout = TimeSpan.FromSeconds(1), Retries = 0 };

    private readonly MeterDriver[] _drivers = [.. options.Drivers.Names.Select(options.Drivers.Read)];

    /// <summary>Asks.</summary>
    /// <param name="resource">A resource name or its shorthand.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="BenchFaultException">No resource name.</exception>
    public async Task<InquiryResult> AskAsync(string resource, CancellationToken cancellationToken)
    {
        var name = ResourceName.Parse(resource);
        var isSerial = name is SerialResource;
        var trouble = "";
        foreach (var way in Ways(isSerial))
        {
            try
            {
                var identity = await AskAsync(name, way, cancellationToken);
                return new(resource, identity, DriversOf(identity), isSerial ? way.ToString() : "", "");
            }
            catch (BenchFaultException fault) when (fault.Kind == BenchFault.NoAnswer)
            {
                trouble = "no answer to *IDN? that can be read";
            }
            catch (BenchFaultException fault)
            {
                return new(resource, null, [], "", $"{fault.Found}. {fault.WhatToDo}");
            }
        }

        return new(resource, null, [], "", trouble);
    }

    private async Task<InstrumentIdentity> AskAsync(ResourceName name, InquiryWay way, CancellationToken cancellationToken)
    {
        var settings = new LinkSettings(way.Serial) { ReplyTerminator = way.Session.ReplyTerminator };
        var link = await options.Links(options.Time).OpenAsync(name, settings, cancellationToken);
        await using var session = new ScpiSession(
            link, way.Session, options.Time, options.LoggerFactory.CreateLogger<InstrumentInquiry>());
        return await session.IdentifyAsync(cancellationToken);
    }

    // The commonest first: 9600 8N1, LF; then the fixture's, then what drivers say. Other links know no speed.
    private IEnumerable<InquiryWay> Ways(bool isSerial)
    {
        var plain = new ScpiSessionOptions { Exchange = OneTry };
        InquiryWay[] all =
        [
            new(new(), plain), new(SerialSettings.Fixture, plain),
            .. _drivers.Select(driver => new InquiryWay(driver.Link.Serial, MeterSessionOptions.Of(driver, OneTry) with { ErrorQuery = plain.ErrorQuery })),
        ];
        return all.Select(way => isSerial ? way : way with { Serial = new() }).Distinct();
    }

    private string[] DriversOf(InstrumentIdentity identity) =>
        [.. _drivers.Where(driver => driver.Drives(identity)).Select(driver => driver.Name)];
}
