using AutoSweep.Core;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Tests.Links;

/// <summary>Names and grammar: VPP-4.3, section 4.3, table 4.3.1 and its examples (from memory); shorthands are our own.</summary>
public sealed class ResourceNameTests
{
    [Theory]
    [InlineData("TCPIP::192.168.1.20::5025::SOCKET", "192.168.1.20", 5025)]
    [InlineData("TCPIP0::1.2.3.4::999::SOCKET", "1.2.3.4", 999)] // the standard's example
    [InlineData("tcpip::dmm.lan::3490::socket", "dmm.lan", 3490)]
    [InlineData("localhost:5025", "localhost", 5025)]
    public void A_socket_has_host_and_port(string text, string host, int port)
    {
        var socket = Assert.IsType<SocketResource>(ResourceName.Parse(text));
        Assert.Equal((host, port, text), (socket.Host, socket.Port, socket.ToString()));
    }

    [Theory]
    [InlineData("ASRL/dev/pts/3::INSTR", "/dev/pts/3")]
    [InlineData("ASRL/dev/ttyUSB0", "/dev/ttyUSB0")]
    [InlineData("asrlCOM3::instr", "COM3")]
    [InlineData("/dev/serial/by-id/usb-1a86_box", "/dev/serial/by-id/usb-1a86_box")]
    [InlineData("COM12", "COM12")]
    public void A_serial_line_has_a_port(string text, string port) =>
        Assert.Equal(port, Assert.IsType<SerialResource>(ResourceName.Parse(text)).Port);

    [Fact]
    public void A_numbered_serial_line_is_the_systems_port_of_that_number()
    {
        var port = Assert.IsType<SerialResource>(ResourceName.Parse("ASRL3::INSTR")).Port;
        Assert.Equal(OperatingSystem.IsWindows() ? "COM3" : "/dev/ttyS2", port);
    }

    [Theory]
    [InlineData("TCPIP0::dev.company.com::INSTR", "dev.company.com", "inst0")] // the standard's example
    [InlineData("TCPIP::1.2.3.4::inst1::INSTR", "1.2.3.4", "inst1")]
    [InlineData("TCPIP::1.2.3.4::hislip0", "1.2.3.4", "hislip0")]
    public void A_lan_instrument_has_host_and_device(string text, string host, string device)
    {
        var instrument = Assert.IsType<LanInstrumentResource>(ResourceName.Parse(text));
        Assert.Equal((host, device), (instrument.Host, instrument.Device));
    }

    [Theory]
    [InlineData("USB::0x1234::125::A22-5::INSTR", 0x1234, 125, "A22-5")] // the standard's example
    [InlineData("USB0::1689::872::C01::0::INSTR", 1689, 872, "C01")]
    public void A_usb_instrument_has_vendor_product_and_serial(string text, int vendor, int product, string serial)
    {
        var usb = Assert.IsType<UsbResource>(ResourceName.Parse(text));
        Assert.Equal((vendor, product, serial), (usb.Vendor, usb.Product, usb.Serial));
    }

    [Theory]
    [InlineData("GPIB::1::0::INSTR", 0, 1)] // the standard's example
    [InlineData("GPIB1::22", 1, 22)]
    public void A_gpib_instrument_has_board_and_address(string text, int board, int primary)
    {
        var gpib = Assert.IsType<GpibResource>(ResourceName.Parse(text));
        Assert.Equal((board, primary), (gpib.Board, gpib.Primary));
    }

    [Theory]
    [InlineData("")]
    [InlineData("meter")]
    [InlineData("TCPIP")]
    [InlineData("TCPIP::::5025::SOCKET")]
    [InlineData("TCPIP::host::SOCKET")]
    [InlineData("TCPIP::host::0::SOCKET")]
    [InlineData("TCPIP::host::65536::SOCKET")]
    [InlineData("TCPIP::host::five::SOCKET")]
    [InlineData("TCPIPx::host::INSTR")]
    [InlineData("TCPIP::host::inst0::5::INSTR")]
    [InlineData("ASRL::INSTR")]
    [InlineData("ASRL3::SOCKET")]
    [InlineData("USB::0x1234::INSTR")]
    [InlineData("USB::0xFFFFF::1::A::INSTR")]
    [InlineData("GPIB::31::INSTR")]
    [InlineData("GPIB::::INSTR")]
    [InlineData("VXI::1::INSTR")]
    [InlineData("host:port")]
    [InlineData("visa:")]
    public void What_is_no_resource_name_is_shown_with_what_was_expected(string text)
    {
        var fault = Assert.Throws<BenchFaultException>(() => ResourceName.Parse(text));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains($"\"{text}\"", fault.Found, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Expected);
    }

    [Theory]
    [InlineData("/dev/usbtmc0")]
    [InlineData("/dev/usbtmc12")]
    public void A_device_file_of_the_usbtmc_driver_is_no_serial_line(string text) =>
        Assert.Equal(text, Assert.IsType<UsbtmcFileResource>(ResourceName.Parse(text)).Path);

    [Theory]
    [InlineData("visa:TCPIP::host::5025::SOCKET", "TCPIP::host::5025::SOCKET")]
    [InlineData("VISA:my meter", "my meter")] // an alias
    public void The_prefix_hands_a_name_to_the_VISA_library_as_it_is(string text, string name) =>
        Assert.Equal(name, Assert.IsType<VisaResource>(ResourceName.Parse(text)).Name);

    [Fact]
    public async Task A_further_kind_of_link_is_one_registration()
    {
        var opener = new LinkOpener(TimeProvider.System);
        await using var link = new Support.FakeLink();
        opener.Register<GpibResource>((_, _, _) => Task.FromResult<ILink>(link));
        Assert.Same(link, await opener.OpenAsync(ResourceName.Parse("GPIB::9::INSTR"), new(new()), default));
    }
}
