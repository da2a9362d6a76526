"""producer: from setups and the reasons behind them to everything an oval tuning episode needs."""

__version__ = "0.1.0"
