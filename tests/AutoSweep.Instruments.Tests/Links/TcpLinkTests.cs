using System.Net;
using System.Net.Sockets;
using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Instruments.Tests.Links;

/// <summary>Over a real socket on this machine.</summary>
public sealed class TcpLinkTests : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    public TcpLinkTests() => _listener.Start();

    public void Dispose() => _listener.Dispose();

    [Fact]
    public async Task Bytes_go_both_ways()
    {
        await using var link = await OpenAsync();
        using var peer = await _listener.AcceptSocketAsync();
        await link.WriteAsync("*IDN?\n"u8.ToArray(), default);
        var buffer = new byte[16];
        Assert.Equal(6, await peer.ReceiveAsync(buffer));
        await peer.SendAsync("A,B\n"u8.ToArray());
        Assert.Equal(4, await link.ReadAsync(buffer, default));
    }

    [Fact]
    public async Task A_cancelled_wait_loses_no_byte()
    {
        await using var link = await OpenAsync();
        using var peer = await _listener.AcceptSocketAsync();
        using var cancel = new CancellationTokenSource();
        var waiting = link.ReadAsync(new byte[16], cancel.Token).AsTask();
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        await peer.SendAsync("12\n"u8.ToArray());
        Assert.Equal(3, await link.ReadAsync(new byte[16], default));
    }

    [Fact]
    public async Task An_instrument_that_goes_away_breaks_the_link()
    {
        await using var link = await OpenAsync();
        (await _listener.AcceptSocketAsync()).Dispose();
        await Assert.ThrowsAsync<IOException>(async () => await link.ReadAsync(new byte[16], default));
    }

    [Fact]
    public async Task A_port_on_which_nobody_listens_is_a_fault_that_says_what_to_check()
    {
        using var held = new Socket(SocketType.Stream, ProtocolType.Tcp); // ours, so that nobody else can come to listen there
        held.Bind(new IPEndPoint(IPAddress.Loopback, 0));
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(((IPEndPoint)held.LocalEndPoint!).Port));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("one at a time", fault.WhatToDo, StringComparison.Ordinal);
    }

    private Task<ILink> OpenAsync(int? port = null)
    {
        var resource = new SocketResource("test", "127.0.0.1", port ?? ((IPEndPoint)_listener.LocalEndpoint).Port);
        return TcpLink.OpenAsync(resource, new(new()), new FakeTimeProvider(), default); // no time to connect ever ends
    }
}
